using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>A remedy as a record for programs.</summary>
internal sealed record RemedyEntry(RemedyKind Kind, bool Helps, double From, double? To, double Tried, string Unit, bool ArrivesAtTried, string Sentence, IReadOnlyList<string> Settings);

/// <summary>Why a move fails as a record for programs; what cures it stands beside it.</summary>
internal sealed record CauseEntry(FailureCause Cause, TorqueShares Shares, IReadOnlyList<CounterfactualResult> Counterfactuals);

/// <summary>One axis of a move as a record for programs.</summary>
internal sealed record AxisEntry(
    string Verdict,
    AxisOutcome Outcome,
    double AskedStepSeconds,
    StepChoice Step,
    CauseEntry? Diagnosis,
    IReadOnlyList<RemedyEntry> Remedies,
    BrokenRun? Broken);

/// <summary>The JSON document of a simulated move.</summary>
internal sealed class MoveDocument(MoveReport report, Scenario scenario, string[] settings, int exitCode)
{
    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText("simulation", Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, "simulation", Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", new ScenarioEntry(scenario.Name, report.File, scenario.Sha256, settings, scenario.Notes)),
        ("verdict", VerdictText.OfMount(report.Results)),
        ("exit_code", exitCode),
        ("axes", report.Results.Select(Entry).ToArray()),
    ];

    private AxisEntry Entry(AxisResult result) => new(
        VerdictText.OfAxis(result),
        result.Outcome,
        report.AskedStepSeconds,
        result.Step,
        result.Diagnosis is { } why ? new CauseEntry(why.Cause, why.Shares, why.Counterfactuals) : null,
        [.. (result.Diagnosis?.Remedies ?? []).Select(remedy => Remedy(result.Outcome, remedy))],
        result.Broken);

    private RemedyEntry Remedy(AxisOutcome outcome, Remedy remedy)
    {
        RemedyAdvice? advice = remedy.To is { } to ? RemedyText.Advice(report, outcome.Axis, remedy, to) : null;
        string unit = remedy.Kind switch
        {
            RemedyKind.LongerRamp => "s",
            RemedyKind.LowerSlewRate => "rad/s at the axis",
            RemedyKind.MoreCurrent => "A peak",
            RemedyKind.Changeover => "rad/s at the motor; null is never",
            RemedyKind.MoreVoltage => "V",
            _ => "N m about the axis",
        };
        return new(remedy.Kind, remedy.To is not null, remedy.From, remedy.To, remedy.Tried, unit, remedy.ArrivesAtTried, advice?.Sentence ?? (remedy.ArrivesAtTried ? "Lets it arrive, but leaves less than 10 % to spare: " : "No help on its own: ") + RemedyText.NoHelp(remedy) + ".", advice?.Settings ?? []);
    }
}
