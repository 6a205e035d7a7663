using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Text.Moves;

/// <summary>All that the text of a simulated move needs.</summary>
internal sealed record MoveReport
{
    /// <summary>Name of the scenario.</summary>
    public required string Name { get; init; }

    /// <summary>The file as the user gave it, for commands to copy.</summary>
    public required string File { get; init; }

    /// <summary>What is laid over the file, repeated in commands to copy.</summary>
    public LaidOver Laid { get; init; } = LaidOver.Nothing;

    /// <summary>The mount and its move.</summary>
    public required MountSetup Setup { get; init; }

    /// <summary>Lumped loads, by axis; empty with bodies.</summary>
    public IReadOnlyDictionary<MountAxis, LumpedLoad> Lumped { get; init; } = new Dictionary<MountAxis, LumpedLoad>();

    /// <summary>Bodies and counterweight; null with lumped loads.</summary>
    public PayloadModel? Payload { get; init; }

    /// <summary>Latitude, rad.</summary>
    public double LatitudeRadians { get; init; }

    /// <summary>What the reader made of the scenario's figures.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Step asked for, s.</summary>
    public required double AskedStepSeconds { get; init; }

    /// <summary>What may be told to try, axis by axis.</summary>
    public IReadOnlyList<AxisAdvice> Advice { get; init; } = [];

    /// <summary>What was assumed and, within its usual range, would change a verdict.</summary>
    public IReadOnlyList<DecidingKey> Deciding { get; init; } = [];

    /// <summary>What may be told to try on an axis.</summary>
    public AxisAdvice AdviceFor(MountAxis axis) => Advice.FirstOrDefault(advice => advice.Axis == axis) ?? new AxisAdvice { Axis = axis };

    /// <summary>One result per simulated axis.</summary>
    public required IReadOnlyList<AxisResult> Results { get; init; }
}
