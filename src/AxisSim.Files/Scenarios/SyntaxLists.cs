using Tomlyn.Syntax;

namespace AxisSim.Files.Scenarios;

/// <summary>The parser's lists can only be walked by hand; this makes arrays of them.</summary>
internal static class SyntaxLists
{
    /// <summary>The nodes of a list.</summary>
    public static T[] ToArray<T>(this SyntaxList<T> list)
        where T : SyntaxNode
    {
        var nodes = new List<T>(list.ChildrenCount);
        foreach (T node in list)
        {
            nodes.Add(node);
        }

        return [.. nodes];
    }
}
