using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Text.Envelopes;

/// <summary>One curve of an envelope.</summary>
/// <param name="Label">What it belongs to: "8 kg", or the scenario as it is.</param>
/// <param name="Setting">The setting that makes it; null for the scenario as it is.</param>
/// <param name="Rates">Answers, ramps ascending.</param>
internal sealed record EnvelopeLine(string Label, string? Setting, IReadOnlyList<GreatestRate> Rates);

/// <summary>The envelope of one axis.</summary>
internal sealed record EnvelopeReport
{
    public required MountAxis Axis { get; init; }

    /// <summary>Factor on inertia, imbalance and friction of the axis with which the rates arrive; 1 for the load as it is.</summary>
    public required double LoadFactor { get; init; }

    /// <summary>Scenario as the user gave it, and the settings over it; for commands to copy.</summary>
    public required string File { get; init; }

    public LaidOver Laid { get; init; } = LaidOver.Nothing;

    /// <summary>Key of the list of values; null without one.</summary>
    public required string? Key { get; init; }

    /// <summary>Slew rate that the file asks for, rad/s.</summary>
    public required double AskedRadiansPerSecond { get; init; }

    /// <summary>The answer for the file as it is, at its own ramp.</summary>
    public required GreatestRate Own { get; init; }

    public required IReadOnlyList<EnvelopeLine> Lines { get; init; }

    public required double ResolutionRadiansPerSecond { get; init; }

    /// <summary>Angle that the axis turns, rad.</summary>
    public required double DistanceRadians { get; init; }

    /// <summary>The greatest rate that the controller can pulse, rad/s; infinite when nothing limits it.</summary>
    public required double PulseLimitRadiansPerSecond { get; init; }

    /// <summary>Whether that holds for every curve; gears and microsteps change it.</summary>
    public bool OnePulseLimit { get; init; } = true;
}
