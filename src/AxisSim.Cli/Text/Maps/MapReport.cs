using AxisSim.Core.Maps;
using AxisSim.Files.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>A value beyond an edge that was run as typed.</summary>
/// <param name="Along">The axis of the map.</param>
/// <param name="Value">The value, in the unit of the key.</param>
/// <param name="Line">The setting, and what it was found to do.</param>
internal sealed record MapTry(int Along, double Value, TypedLine Line);

/// <summary>A whole map: what it is of, its cells, and what follows from them.</summary>
internal sealed class MapReport(MapHeader header, MapCells cells, FirstMessage invalid)
{
    /// <summary>Values beyond an edge with which the whole move, run as typed, arrives and settles; null when the scenario could not be read again as it was.</summary>
    public IReadOnlyList<MapTry>? Tries { get; init; } = [];

    /// <summary>What the map is of.</summary>
    public MapHeader Header => header;

    /// <summary>Its cells.</summary>
    public MapCells Cells => cells;

    /// <summary>The first cell that is not valid.</summary>
    public FirstMessage Invalid => invalid;

    /// <summary>The file's own point; an unknown end when there is none.</summary>
    public CellResult Own => cells[cells.OwnPlace];

    /// <summary>Distances of the own point from the edge; empty when it is not on the map.</summary>
    public IReadOnlyList<EdgeDistance> Distances { get; } = EdgeDistances.From(cells, header.X.Axis(), header.Y.Axis(), header.X.Own.Shown, header.Y.Own.Shown);

    /// <summary>The key along an axis of the map.</summary>
    public MapKey Key(int along) => along == 0 ? header.X : header.Y;

    /// <summary>The figure that the metric is about; NaN for outcomes.</summary>
    public double Figure(in CellResult cell) => header.Metric switch
    {
        MapMetric.Margin => cell.TorqueMargin,
        MapMetric.Settle => cell.SettleSeconds,
        MapMetric.Duration => cell.DurationSeconds,
        MapMetric.Temperature => cell.ContinuousCelsius,
        _ => double.NaN,
    };
}
