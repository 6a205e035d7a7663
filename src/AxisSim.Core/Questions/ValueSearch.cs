using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>The search for an edge along a row of values.</summary>
/// <param name="Row">The values.</param>
/// <param name="Line">The search over their places.</param>
internal sealed record ValueSearch(EdgeRow Row, EdgeLine Line)
{
    /// <summary>The value on the good side of the edge; null when there is none.</summary>
    public double? Good => Line.Good is { } place ? Row.Value(place) : null;

    /// <summary>The value on its bad side; null when there is none.</summary>
    public double? Bad => Line.Bad is { } place ? Row.Value(place) : null;

    /// <summary>How the move at that value ends; null when there is none.</summary>
    public MoveEnd? BadEnd => Line.Bad is { } place ? Line.Answers[place] : null;

    /// <summary>Whether something arrives again beyond the first failure.</summary>
    public bool HasIsland => Line.Bad is { } bad && Line.Answers.Any(answer => answer.Key > bad && answer.Value == MoveEnd.Arrives);

    /// <summary>The question to ask of moves at a value.</summary>
    public EdgeQuestion Question(Func<double, IEnumerable<BatchCase>> moves) => new(Line, place => moves(Row.Value(place)));

    /// <summary>A search for the last of rising values up to which all arrive, about a place where the edge is expected.</summary>
    /// <param name="least">Least value; none lies below it.</param>
    /// <param name="guess">Where the edge is expected.</param>
    /// <param name="top">Greatest value; below the least there is nothing to search.</param>
    public static ValueSearch Around(double least, double guess, double top)
    {
        double[] near = [0.3, 0.5, 0.7, 0.85, 1.0, 1.2], below = [0.02, 0.05, 0.1, 0.2], above = [2.0, 3.0, 5.0];
        const int fineness = 32;
        double middle = Math.Clamp(guess, Math.Min(least, top), top);
        if (!(middle > 0.0 && least <= top))
        {
            return new ValueSearch(new EdgeRow([1.0]), new EdgeLine(EdgeKind.LastArriving, 0, -1, []));
        }

        double[] marks = [.. near.Concat(below).Concat(above).Select(share => share * middle).Append(least).Append(top).Where(value => value >= least && value <= top && value > 0.0).Distinct().Order()];
        var row = new EdgeRow(marks, fineness);
        bool Near(double value) => value >= near[0] * middle * (1.0 - 1e-12) && value <= near[^1] * middle * (1.0 + 1e-12);
        IEnumerable<int> Places(Func<double, bool> wanted) => Enumerable.Range(0, marks.Length).Where(i => wanted(marks[i])).Select(i => i * fineness);

        // Fast motors need short steps, so that the greatest values cost most: they are tried only when all else arrives.
        return new ValueSearch(row, new EdgeLine(EdgeKind.LastArriving, 0, row.Last, Places(Near), beyond: Places(value => value > near[^1] * middle)));
    }
}
