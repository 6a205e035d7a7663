namespace AxisSim.Plots.Pictures;

/// <summary>One point of a trade-off.</summary>
/// <param name="SlewSeconds">Duration of the slew, s.</param>
/// <param name="SettleSeconds">Settling after it, s.</param>
/// <param name="LoadFactor">Load factor.</param>
/// <param name="Celsius">Winding temperature, degrees Celsius.</param>
/// <param name="FullSteps">Whether its drive full-steps at speed.</param>
public sealed record FrontMark(double SlewSeconds, double SettleSeconds, double LoadFactor, double Celsius, bool FullSteps);

/// <summary>A trade-off of slew time against margin, settling and temperature, ready to be drawn.</summary>
public sealed record FrontPicture
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>The verdict in a sentence, drawn under the title; may be empty.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>The points.</summary>
    public required IReadOnlyList<FrontMark> Points { get; init; }

    /// <summary>The recommended point; null to mark none.</summary>
    public FrontMark? Chosen { get; init; }

    /// <summary>Load factor asked for.</summary>
    public required double AskedLoadFactor { get; init; }
}
