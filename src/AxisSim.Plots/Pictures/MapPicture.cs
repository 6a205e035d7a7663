using AxisSim.Core.Batches;

namespace AxisSim.Plots.Pictures;

/// <summary>What a cell of a map shows. The first six are those of <see cref="BatchEnd"/>.</summary>
public enum MapCell
{
    /// <summary>The move arrives.</summary>
    Arrives,

    /// <summary>The motor loses sync.</summary>
    Stalls,

    /// <summary>The clutch slips.</summary>
    ClutchSlips,

    /// <summary>It arrives but does not settle in the time observed.</summary>
    DoesNotSettle,

    /// <summary>A quantity was no longer a finite number.</summary>
    Broken,

    /// <summary>No step is short enough: not simulated.</summary>
    NotWorkable,

    /// <summary>The two values together are no valid scenario.</summary>
    NotValid,

    /// <summary>Not computed.</summary>
    NotComputed,
}

/// <summary>One axis of a map: a key and its values.</summary>
/// <param name="Title">Its name with its unit, as on an axis: "Slew rate, deg/s".</param>
/// <param name="Values">Its values in that unit, ascending.</param>
/// <param name="Logarithmic">Whether the axis is logarithmic; the values are positive then.</param>
public sealed record MapAxis(string Title, IReadOnlyList<double> Values, bool Logarithmic = false);

/// <summary>A figure of each cell, shown by a scale of tones where the move arrives.</summary>
/// <param name="Title">Its name with its unit: "Torque margin, %".</param>
/// <param name="Values">Values in that unit, cell by cell; not-a-number where there is none.</param>
public sealed record MapTones(string Title, IReadOnlyList<double> Values);

/// <summary>A marked point, such as the scenario as it is.</summary>
/// <param name="X">Along the first key, in its unit.</param>
/// <param name="Y">Along the second key, in its unit.</param>
/// <param name="Label">Label beside it.</param>
public sealed record MapPoint(double X, double Y, string Label);

/// <summary>A map of many moves over two keys, ready to be drawn.</summary>
public sealed record MapPicture
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>The verdict in a sentence, drawn under the title; may be empty.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>The key along the horizontal axis.</summary>
    public required MapAxis X { get; init; }

    /// <summary>The key along the vertical axis.</summary>
    public required MapAxis Y { get; init; }

    /// <summary>The cells row by row from the lowest value of Y: index y * (number of x) + x.</summary>
    public required IReadOnlyList<MapCell> Cells { get; init; }

    /// <summary>The figure that is shown where the move arrives; null to show the outcome alone.</summary>
    public MapTones? Metric { get; init; }

    /// <summary>A marked point; not drawn outside the map.</summary>
    public MapPoint? Point { get; init; }

    /// <summary>The cell for the end of a case.</summary>
    public static MapCell CellOf(BatchEnd end) => end switch
    {
        BatchEnd.Arrives => MapCell.Arrives,
        BatchEnd.Stalls => MapCell.Stalls,
        BatchEnd.ClutchSlips => MapCell.ClutchSlips,
        BatchEnd.DoesNotSettle => MapCell.DoesNotSettle,
        BatchEnd.Broken => MapCell.Broken,
        BatchEnd.NotWorkable => MapCell.NotWorkable,
        _ => throw new ArgumentOutOfRangeException(nameof(end), end, "a map has no cell for it"),
    };
}
