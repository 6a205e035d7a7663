using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>How the legend shows a series.</summary>
internal enum Swatch
{
    /// <summary>A line, with or without markers.</summary>
    Line,

    /// <summary>Markers alone.</summary>
    Marker,

    /// <summary>A filled band.</summary>
    Band,

    /// <summary>A hatched band.</summary>
    Hatch,

    /// <summary>A vertical line.</summary>
    Upright,

    /// <summary>A filled area, hatched or not, with a frame.</summary>
    Cell,
}

/// <summary>Dash of a line.</summary>
internal enum Dash
{
    /// <summary>No gaps.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dashed,

    /// <summary>Dots.</summary>
    Dotted,

    /// <summary>A long dash and a dot by turns.</summary>
    DashDot,
}

/// <summary>How one series looks, on the plot and in the legend. Two looks of one panel differ without their colours.</summary>
/// <param name="Swatch">Kind of mark.</param>
/// <param name="Colour">Colour of the line, marker or fill.</param>
/// <param name="Width">Width of the line, px; 0 for none.</param>
/// <param name="Dash">Dash of the line.</param>
/// <param name="Marker">Shape of the markers.</param>
/// <param name="Hollow">Markers filled with paper.</param>
/// <param name="MarkerSize">Half the width of the markers, px.</param>
/// <param name="Pattern">Hatching of a cell, in the colour; the fill lies below it.</param>
/// <param name="Fill">Fill of a cell.</param>
internal sealed record Look(
    Swatch Swatch,
    OxyColor Colour,
    double Width = 0,
    Dash Dash = Dash.Solid,
    MarkerType Marker = MarkerType.None,
    bool Hollow = false,
    double MarkerSize = 5.5,
    Pattern Pattern = Pattern.None,
    OxyColor Fill = default);

/// <summary>All looks, panel by panel.</summary>
internal static partial class Looks
{
    public static readonly Look ActualRate = new(Swatch.Line, Palette.Black, 2.6);
    public static readonly Look PlannedRate = new(Swatch.Line, Palette.SkyBlue, 2.8, Dash.Dashed);

    public static readonly Look DeliveredTorque = new(Swatch.Band, Palette.Shade);
    public static readonly Look AvailableTorque = new(Swatch.Line, Palette.Blue, 2.2, Dash.Dashed);
    public static readonly Look NeededTorque = new(Swatch.Line, Palette.Vermillion, 2.6);
    public static readonly Look FullStepping = new(Swatch.Hatch, Palette.Frame);

    public static readonly Look AxisError = new(Swatch.Line, Palette.Black, 1.6);
    public static readonly Look PayloadError = new(Swatch.Line, Palette.Vermillion, 2.4, Dash.Dotted);
    public static readonly Look SettleBand = new(Swatch.Band, Palette.Tint(Palette.Green, 0.28));
    public static readonly Look CommandError = new(Swatch.Line, Palette.Blue, 1.8, Dash.Dashed);
    public static readonly Look Settled = new(Swatch.Upright, Palette.Green, 2.0);

    public static readonly Look PhaseCurrents = new(Swatch.Band, Palette.Tint(Palette.Blue, 0.45));
    public static readonly Look CurrentAmplitude = new(Swatch.Line, Palette.Black, 1.5);
    public static readonly Look Saturation = new(Swatch.Band, Palette.Tint(Palette.Orange, 0.75));

    public static readonly Look LoadAngle = new(Swatch.Line, Palette.Black, 1.8);
    public static readonly Look StableRange = new(Swatch.Band, Palette.Tint(Palette.Green, 0.28));

    public static readonly Look Event = new(Swatch.Upright, Palette.Vermillion, 2.2, Dash.DashDot);

    public static readonly Look Microstepped = new(Swatch.Line, Palette.Blue, 2.6);
    public static readonly Look MicrosteppedSimulated = new(Swatch.Marker, Palette.Blue, Marker: MarkerType.Circle, Hollow: true, MarkerSize: 6.5);
    public static readonly Look MicrosteppedSupply = new(Swatch.Band, Palette.Tint(Palette.SkyBlue, 0.35));
    public static readonly Look FullStepped = new(Swatch.Line, Palette.Vermillion, 2.6, Dash.Dashed);
    public static readonly Look FullSteppedSimulated = new(Swatch.Marker, Palette.Vermillion, Marker: MarkerType.Square, MarkerSize: 3.8);
    public static readonly Look FullSteppedSupply = new(Swatch.Band, Palette.Tint(Palette.Orange, 0.7));
    public static readonly Look MicrosteppedEither = new(Swatch.Line, Palette.Blue, 1.6, Dash.Dotted);
    public static readonly Look FullSteppedEither = new(Swatch.Line, Palette.Vermillion, 1.6, Dash.DashDot);
    public static readonly Look Path = new(Swatch.Line, Palette.Black, 2.0);
    public static readonly Look PathStart = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Circle);
    public static readonly Look PathSlewReached = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Triangle);
    public static readonly Look PathBraking = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Diamond, Hollow: true);
    public static readonly Look PathStop = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Square, Hollow: true);
    public static readonly Look Changeover = new(Swatch.Upright, Palette.QuietInk, 2.0, Dash.DashDot);
    public static readonly Look Unstable = new(Swatch.Hatch, Palette.Frame);

    /// <summary>Looks that share a panel, for the check that they can be told apart in grey.</summary>
    public static IReadOnlyList<(string Panel, IReadOnlyList<Look> Looks)> Panels =>
    [
        ("rate", [PlannedRate, ActualRate, Event]),
        ("torque", [DeliveredTorque, AvailableTorque, NeededTorque, FullStepping, Event]),
        ("error", [AxisError, PayloadError, SettleBand, Event]),
        ("settling", [AxisError, CommandError, SettleBand, Settled]),
        ("loss of sync", [LoadAngle, StableRange, Event]),
        ("current", [PhaseCurrents, CurrentAmplitude, Event]),
        ("saturation", [Saturation, Event]),
        ("torque-speed", [
            Microstepped, MicrosteppedSimulated, MicrosteppedSupply, FullStepped, FullSteppedSimulated, FullSteppedSupply, MicrosteppedEither, FullSteppedEither,
            Path, PathStart, PathSlewReached, PathBraking, PathStop, Changeover, Unstable]),
        ("map", [CellToned, CellNoValue, .. CellKinds.Select(Cell), MapEdge, MapPoint]),
        ("envelope", [.. Envelopes, EnvelopeBound, MapPoint]),
        ("comparison", [.. Envelopes, ComparisonNeed, MapPoint]),
        ("front", [FrontAsked, FrontMicro, FrontFull, FrontShort, MapPoint]),
        ("balance, sky", [CellToned, SkyGround, SkyHidden, Path, PathStart, PathStop, MapPoint]),
        ("balance, bar", [BarPole, BarEnd, BarBar, BarPart, BarWeights, BarPoint, BarAdvised]),
        ("growth", [Measured, SlopeOne, FittedLine]),
        ("reduction", [ReductionSimulated, ReductionPaper, ReductionPulses, ReductionLevel, ReductionOwn, ReductionMatched]),
    ];
}
