using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Motors;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>One candidate as a record for programs; the rank is missing where it takes no part in the ranking.</summary>
internal sealed record CandidateEntry(
    int? Rank, string Motor, string Frame, StepperMotor Figures, double VoltageLossVolts, double? TotalReduction, double? SupplyVolts, CandidateFate Fate, string Why, double SlewSeconds, double SettleSeconds, double OnTargetSeconds,
    double MeanWatts, IReadOnlyList<CandidateAxis> Axes);

/// <summary>The JSON document of a comparison.</summary>
internal sealed class ComparisonDocument(ComparisonReport report, Scenario scenario, string motorsFile)
{
    private const string Kind = "comparison";

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText(Kind, Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, Kind, Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", ScenarioEntry.Of(scenario, report.File)),
        ("motors", motorsFile),
        ("verdict", ComparisonVerdict.Of(report)),
        ("load_factor", 1.0 + report.Margin),
        ("slew_current_share", report.CurrentShare),
        ("resolution_radians_per_second", report.ResolutionRadiansPerSecond),
        ("measured_curves", report.Fits),
        ("tried_as_typed", report.Try is { } best ? new { Motor = best.Result.Candidate.Motor.Name, best.Line.Axes, best.Line.Settings } : null),
        ("candidates", report.Results.Select(Entry).ToArray()),
    ];

    private CandidateEntry Entry(CandidateResult result, int index) => new(
        result.Fate == CandidateFate.Ranked ? index + 1 : null,
        result.Candidate.Motor.Name,
        result.Candidate.Motor.Frame,
        result.Candidate.Motor.Motor,
        result.Candidate.Motor.VoltageLossVolts,
        result.Candidate.TotalReduction,
        result.Candidate.SupplyVolts,
        result.Fate,
        CandidateText.Why(result, report.Margin),
        result.SlewSeconds,
        result.SettleSeconds,
        result.OnTargetSeconds,
        result.MeanWatts,
        result.Axes);
}
