using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>The recommendation for one axis with the run of the scenario that carries it.</summary>
/// <param name="Answer">What the search found.</param>
/// <param name="Now">Settings of the file.</param>
/// <param name="Model">The axis as the file has it.</param>
/// <param name="Run">The scenario's own move, read again with all recommended settings, run as simulate runs it; null when nothing holds.</param>
/// <param name="AskedStepSeconds">Step asked for, s.</param>
/// <param name="StepSeconds">Step in use, s.</param>
internal sealed record RecommendedAxis(AxisRecommendation Answer, AxisSettings Now, AxisModel Model, BatchResult? Run, double AskedStepSeconds, double StepSeconds);

/// <summary>A recommendation, ready to be told.</summary>
internal sealed record RecommendReport
{
    public required string Name { get; init; }

    public required string File { get; init; }

    /// <summary>Settings of the command line.</summary>
    public required string[] Settings { get; init; }

    public required RecommendAim Aim { get; init; }

    /// <summary>Margin asked for, as a share.</summary>
    public required double Margin { get; init; }

    public required Tolerances Tolerances { get; init; }

    public required bool Coarse { get; init; }

    public required IReadOnlyList<RecommendedAxis> Axes { get; init; }

    /// <summary>Axes of which the scenario's own move fails somewhere when all are set as recommended.</summary>
    public required int Together { get; init; }

    /// <summary>Settings to copy.</summary>
    public required IReadOnlyList<string> Recommended { get; init; }

    /// <summary>Whether every axis has an answer.</summary>
    public bool Found => Axes.All(axis => axis.Answer.Chosen is not null);
}
