namespace AxisSim.Plots.Pictures;

/// <summary>A point of an envelope.</summary>
/// <param name="RampSeconds">Ramp time, s.</param>
/// <param name="RateRadiansPerSecond">Greatest safe slew rate, rad/s; not-a-number when no rate that was tried is safe.</param>
public sealed record EnvelopePoint(double RampSeconds, double RateRadiansPerSecond);

/// <summary>One curve of an envelope.</summary>
/// <param name="Label">What it belongs to, with unit: "10 kg".</param>
/// <param name="Points">Its points, ramps ascending.</param>
public sealed record EnvelopeCurve(string Label, IReadOnlyList<EnvelopePoint> Points);

/// <summary>The greatest safe slew rate against the ramp, ready to be drawn.</summary>
public sealed record EnvelopePicture
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>The verdict in a sentence, drawn under the title; may be empty.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>The curves; more than there are looks (seven) share them by turns.</summary>
    public required IReadOnlyList<EnvelopeCurve> Curves { get; init; }

    /// <summary>Ramp and slew rate of the scenario, in s and rad/s, with a label; null to mark nothing.</summary>
    public (EnvelopePoint At, string Label)? Own { get; init; }

    /// <summary>The upper bound of the search, rad/s, with a label; null to draw none.</summary>
    public (double RateRadiansPerSecond, string Label)? Bound { get; init; }

    /// <summary>Whether the ramps are on a logarithmic axis.</summary>
    public bool LogarithmicRamps { get; init; }
}
