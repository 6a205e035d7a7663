namespace AxisSim.Core.Questions;

/// <summary>A row of values along which an edge is looked for, as places: marks that are tried first, and between each two of them evenly many finer places, even in ratio.</summary>
/// <remarks>Place k times the fineness is mark k itself, to the last bit: a value that was asked for by name is among those tried.</remarks>
internal sealed class EdgeRow(IReadOnlyList<double> marks, int fineness = EdgeRow.Fine)
{
    /// <summary>Finer places from one mark to the next: neighbours differ by less than 0.4 % where marks differ by a quarter.</summary>
    public const int Fine = 64;

    /// <summary>The last place.</summary>
    public int Last => (marks.Count - 1) * fineness;

    /// <summary>The places of the marks from one of them on.</summary>
    public IEnumerable<int> Marks(int first = 0) => Enumerable.Range(first, marks.Count - first).Select(i => i * fineness);

    /// <summary>The value of a place.</summary>
    public double Value(int place)
    {
        int mark = place / fineness, part = place % fineness;
        return part == 0 ? marks[mark] : marks[mark] * Math.Pow(marks[mark + 1] / marks[mark], (double)part / fineness);
    }
}
