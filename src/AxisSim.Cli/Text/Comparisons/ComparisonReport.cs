using AxisSim.Core.Comparisons;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>A candidate that was run as typed.</summary>
/// <param name="Result">The candidate.</param>
/// <param name="Line">Its settings, and what they were found to do.</param>
internal sealed record ComparisonTry(CandidateResult Result, TypedLine Line);

/// <summary>A comparison with what was asked.</summary>
internal sealed record ComparisonReport
{
    /// <summary>Scenario as the user gave it, and the settings over it; for commands to copy.</summary>
    public required string File { get; init; }

    public LaidOver Laid { get; init; } = LaidOver.Nothing;

    /// <summary>The mount of the scenario.</summary>
    public required MountSetup Mount { get; init; }

    public required IReadOnlyList<MountAxis> Axes { get; init; }

    /// <summary>Margin as a share: 0.3 for a load factor of 1.3.</summary>
    public required double Margin { get; init; }

    public required double CurrentShare { get; init; }

    public required double ResolutionRadiansPerSecond { get; init; }

    /// <summary>Results, the best first.</summary>
    public required IReadOnlyList<CandidateResult> Results { get; init; }

    /// <summary>The motors as the table has them.</summary>
    public IReadOnlyList<MotorChoice> Datasheets { get; init; } = [];

    /// <summary>What measured curves made of motors.</summary>
    public IReadOnlyList<MeasuredFit> Fits { get; init; } = [];

    /// <summary>The best result of each motor, the best first.</summary>
    public IReadOnlyList<CandidateResult> Best => ComparisonStudy.BestOfEach(Results);

    /// <summary>The best candidate whose settings, run as typed, keep what is said of it; null when none does, or none can be typed.</summary>
    public ComparisonTry? Try { get; init; }

    /// <summary>Settings that let at least one motor settle that does not settle now, each run as typed; with the places of those that then settle among the best.</summary>
    public IReadOnlyList<(string Setting, IReadOnlyList<int> Places)> Settles { get; init; } = [];

    /// <summary>The winner; null when none will do.</summary>
    public CandidateResult? Winner => Results.Count > 0 && Results[0].Fate == CandidateFate.Ranked ? Results[0] : null;
}
