namespace AxisSim.Plots.Pictures;

/// <summary>Imbalance about one axis over the sky.</summary>
/// <param name="Heading">Heading of the panel.</param>
/// <param name="NewtonMetres">Size of the torque, N m, row by row from the lowest declination: index declination * (number of hour angles) + hour angle; not-a-number below the horizon.</param>
/// <param name="HiddenNewtonMetres">Up to this friction hides it, N m; not-a-number where that is not known.</param>
/// <param name="Worst">Where it is greatest, with its label; null when that is nowhere on the map.</param>
public sealed record SkyImbalance(string Heading, IReadOnlyList<double> NewtonMetres, double HiddenNewtonMetres, MapPoint? Worst);

/// <summary>A part of the payload seen along Side: a rectangle.</summary>
/// <param name="Name">Name.</param>
/// <param name="OutMetres">Centre along the declination axis, m; negative on the side of the counterweight.</param>
/// <param name="ForwardMetres">Centre along the tube, m.</param>
/// <param name="AlongOutMetres">Size along the declination axis, m; 0 for a point.</param>
/// <param name="AlongForwardMetres">Size along the tube, m; 0 for a point.</param>
public sealed record PayloadPart(string Name, double OutMetres, double ForwardMetres, double AlongOutMetres, double AlongForwardMetres);

/// <summary>The imbalance of a payload over the sky, and the payload itself, ready to be drawn.</summary>
public sealed record BalancePicture
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>The verdict in a sentence; may be empty.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>Hour angles of the map, h, ascending.</summary>
    public required IReadOnlyList<double> HourAngles { get; init; }

    /// <summary>Declinations of the map, deg, ascending.</summary>
    public required IReadOnlyList<double> Declinations { get; init; }

    /// <summary>A map for each axis.</summary>
    public required IReadOnlyList<SkyImbalance> Axes { get; init; }

    /// <summary>The way of the move: hour angle, h, and declination, deg.</summary>
    public IReadOnlyList<(double HourAngle, double Declination)> Move { get; init; } = [];

    /// <summary>Parts on the telescope side.</summary>
    public required IReadOnlyList<PayloadPart> Parts { get; init; }

    /// <summary>The weights; null without a counterweight.</summary>
    public PayloadPart? Weights { get; init; }

    /// <summary>Where the weights should be; null when they may stay.</summary>
    public PayloadPart? Advised { get; init; }

    /// <summary>Length of the bar from the polar axis, m; 0 when it is not known.</summary>
    public double BarMetres { get; init; }

    /// <summary>Greatest distance of the weights that the bar allows, m; null when it is not known.</summary>
    public double? GreatestMetres { get; init; }
}
