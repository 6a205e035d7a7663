using System.Xml.Linq;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;

namespace AxisSim.Report.Pages;

/// <summary>A figure as an element of a page, with names of its own so that several can stand on one page.</summary>
internal static class SvgInline
{
    /// <summary>The element.</summary>
    /// <param name="key">A short name that no other figure of the page has.</param>
    /// <param name="figure">The figure.</param>
    public static XElement Of(string key, IFigure figure)
    {
        using MemoryStream stream = new();
        FigureWriter.WriteSvg(figure, stream);
        stream.Position = 0;
        XElement root = XElement.Load(stream);

        // The page gives the width, the view box the shape.
        root.SetAttributeValue("width", null);
        root.SetAttributeValue("height", null);
        foreach (XAttribute attribute in root.Descendants().Attributes())
        {
            if (attribute.Name == "id")
            {
                attribute.Value = $"{key}-{attribute.Value}";
            }
            else if (attribute.Value.StartsWith("url(#", StringComparison.Ordinal))
            {
                attribute.Value = $"url(#{key}-{attribute.Value["url(#".Length..]}";
            }
        }

        return root;
    }
}
