using AxisSim.Cli.Text.Moves;
using AxisSim.Cli.Text;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>A cure as a record for programs; only one that was run as typed and holds says that it helps.</summary>
internal sealed record CureEntry(CureKind Kind, bool Helps, double From, double? To, double Tried, string Unit, bool ArrivesAtTried, string Sentence, IReadOnlyList<string> Settings);

/// <summary>Why a move fails as a record for programs; what cures it stands beside it.</summary>
internal sealed record CauseEntry(Limit Cause, TorqueShares Shares, IReadOnlyList<ChangeResult> Changes, IReadOnlyList<ChangePair> Pairs);

/// <summary>Advice that was run as typed and keeps its promise, as a record for programs.</summary>
internal sealed record AdviceEntry(IReadOnlyList<CureAdvice> Cures, IReadOnlyList<CureAdvice> Pairs, IReadOnlyList<CureAdvice> Lifts, IReadOnlyList<CureAdvice> Settles, IReadOnlyList<CureAdvice> Savings);

/// <summary>One axis of a move as a record for programs.</summary>
internal sealed record AxisEntry(
    string Verdict,
    AxisOutcome Outcome,
    double AskedStepSeconds,
    StepChoice Step,
    CauseEntry? Diagnosis,
    IReadOnlyList<CureEntry> Cures,
    AdviceEntry Advice,
    GreatestRate? Rates,
    BrokenRun? Broken);

/// <summary>The JSON document of a simulated move.</summary>
internal sealed class MoveDocument(MoveReport report, Scenario scenario, int exitCode)
{
    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText("simulation", Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, "simulation", Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", ScenarioEntry.Of(scenario, report.File)),
        ("verdict", VerdictText.OfMount(report.Results)),
        ("exit_code", exitCode),
        ("axes", report.Results.Select(Entry).ToArray()),
    ];

    private AxisEntry Entry(AxisResult result) => new(
        VerdictText.OfAxis(result),
        result.Outcome,
        report.AskedStepSeconds,
        result.Step,
        result.Diagnosis is { } diagnosis ? new CauseEntry(diagnosis.Why.Limit, diagnosis.Why.Shares, diagnosis.Why.Changes, diagnosis.Why.Pairs) : null,
        [.. (result.Diagnosis?.Cures.Alone ?? []).Select(cure => Entry(result.Outcome, cure))],
        Advice(report.AdviceFor(result.Outcome.Axis)),
        result.Rates,
        result.Broken);

    private static AdviceEntry Advice(AxisAdvice advice) => new(advice.Cures, advice.Pairs, advice.Lifts, advice.Settles, advice.Savings);

    private CureEntry Entry(AxisOutcome outcome, Cure cure)
    {
        CureAdvice? advice = cure.To is { } to ? CureAdvices.Advice(report, outcome.Axis, cure, to) : null;
        CureAdvice? told = advice is null ? null : report.AdviceFor(outcome.Axis).Cures.FirstOrDefault(one => advice.Settings.Count > 0 ? one.Settings.SequenceEqual(advice.Settings) : one.Sentence == advice.Sentence);
        bool helps = told is not null;
        string unit = cure.Kind switch
        {
            CureKind.LongerRamp => "s",
            CureKind.LowerSlewRate => "rad/s at the axis",
            CureKind.MoreCurrent => "A peak",
            CureKind.Changeover => "rad/s at the motor; null is never",
            CureKind.MoreVoltage => "V",
            CureKind.MoreDamping => "share of critical",
            _ => "N m about the axis",
        };
        return new(cure.Kind, helps, cure.From, helps ? cure.To : null, cure.Tried, unit, cure.ArrivesAtTried, helps ? told!.Sentence : (cure.ArrivesAtTried ? "Lets it arrive, but leaves less than 10 % to spare: " : "No help on its own: ") + CureAdvices.NoHelp(cure) + ".", helps ? told!.Settings : []);
    }
}
