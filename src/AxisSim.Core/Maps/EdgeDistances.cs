using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Maps;

/// <summary>How far the user's own point is from the edge of what arrives, in one direction along one axis.</summary>
/// <param name="Along">The axis of the map: 0 is the first key, 1 the second.</param>
/// <param name="Up">Towards greater values.</param>
/// <param name="EdgeValue">Where the edge lies, in the values of the axis, half-way between two cells; NaN when there is none up to the end of the range.</param>
/// <param name="BeyondValue">The nearest value of the axis beyond the edge; NaN when there is none.</param>
/// <param name="BeyondEnd">How that cell ends.</param>
public sealed record EdgeDistance(int Along, bool Up, double EdgeValue, double BeyondValue, MoveEnd BeyondEnd);

/// <summary>Looks from the user's own point along the row and the column of the map nearest to it.</summary>
public static class EdgeDistances
{
    /// <summary>The four directions: first key down and up, second key down and up. Empty when the point is not on the map.</summary>
    public static IReadOnlyList<EdgeDistance> From(MapCells cells, GridAxis first, GridAxis second, double firstValue, double secondValue)
    {
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double u = first.PositionOf(firstValue), v = second.PositionOf(secondValue);
        if (double.IsNaN(u) || double.IsNaN(v) || cells.End(cells.OwnPlace) == MoveEnd.Unknown)
        {
            return [];
        }

        int column = (int)Math.Round(u), row = (int)Math.Round(v);
        bool good = cells.End(cells.OwnPlace) == MoveEnd.Arrives;
        return
        [
            Look(0, up: false, u, first, good, i => cells.End(cells.Place(i, row))),
            Look(0, up: true, u, first, good, i => cells.End(cells.Place(i, row))),
            Look(1, up: false, v, second, good, j => cells.End(cells.Place(column, j))),
            Look(1, up: true, v, second, good, j => cells.End(cells.Place(column, j))),
        ];
    }

    private static EdgeDistance Look(int along, bool up, double from, GridAxis axis, bool good, Func<int, MoveEnd> end)
    {
        double last = from;
        int start = up ? (int)Math.Floor(from) + 1 : (int)Math.Ceiling(from) - 1;
        for (int i = start; i >= 0 && i < axis.Count; i += up ? 1 : -1)
        {
            if ((end(i) == MoveEnd.Arrives) != good)
            {
                return new EdgeDistance(along, up, axis.ValueAt(0.5 * (last + i)), axis.Values[i], end(i));
            }

            last = i;
        }

        return new EdgeDistance(along, up, double.NaN, double.NaN, MoveEnd.Unknown);
    }
}
