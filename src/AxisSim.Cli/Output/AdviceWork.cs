using AxisSim.Cli.Text.Moves;
using AxisSim.Core;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Sheets;

namespace AxisSim.Cli.Output;

/// <summary>Puts together what may be told to try, and leaves out what does not keep its promise when it is run as typed.</summary>
internal static class AdviceWork
{
    private const double Nominal = 1.0;

    /// <summary>The advice for every axis of a report.</summary>
    public static IReadOnlyList<AxisAdvice> Of(Scenario scenario, MoveReport report, QuestionOptions options)
    {
        AxisAdvice[] drafts = Drafts(report);
        (int Draft, Func<AxisAdvice, IReadOnlyList<CureAdvice>> Part, double Factor)[] parts =
        [
            .. from i in Enumerable.Range(0, drafts.Length)
               from part in Parts
               select (i, part.Of, part.Factor),
        ];
        (int Draft, int Part, CureAdvice Advice, double Factor)[] asked = [.. parts.SelectMany((part, p) => part.Part(drafts[part.Draft]).Where(advice => advice.Settings.Count > 0).Select(advice => (part.Draft, p % Parts.Length, advice, part.Factor)))];
        bool[] holds = TypedTrial.Hold(scenario, [.. asked.Select(one => new Promise(drafts[one.Draft].Axis, one.Advice.Settings, one.Factor))], options);
        bool Kept(int draft, int part, CureAdvice advice) => advice.Settings.Count == 0 || Enumerable.Range(0, asked.Length).Any(k => asked[k].Draft == draft && asked[k].Part == part && ReferenceEquals(asked[k].Advice, advice) && holds[k]);
        return [.. drafts.Select((draft, i) => draft with
        {
            Cures = [.. draft.Cures.Where(advice => Kept(i, 0, advice))],
            Pairs = [.. draft.Pairs.Where(advice => Kept(i, 1, advice))],
            Lifts = [.. draft.Lifts.Where(advice => Kept(i, 2, advice))],
            Settles = [.. draft.Settles.Where(advice => Kept(i, 3, advice))],
            Savings = [.. draft.Savings.Where(advice => Kept(i, 4, advice))],
        })];
    }

    /// <summary>What the searches suggest, before it is run as typed.</summary>
    internal static AxisAdvice[] Drafts(MoveReport report) => [.. report.Results.Where(result => result.Broken is null).Select(result => Draft(report, result))];

    private static readonly (Func<AxisAdvice, IReadOnlyList<CureAdvice>> Of, double Factor)[] Parts =
    [
        (advice => advice.Cures, Cure.AskedLoadFactor),
        (advice => advice.Pairs, Cure.AskedLoadFactor),
        (advice => advice.Lifts, LoadFactor.Usual),
        (advice => advice.Settles, Nominal),
        (advice => advice.Savings, LoadFactor.Usual),
    ];

    private static AxisAdvice Draft(MoveReport report, AxisResult result)
    {
        MountAxis axis = result.Outcome.Axis;
        CureAdvice[] From(Cures? cures) => [.. (cures?.Helping ?? []).Select(cure => CureAdvices.Advice(report, axis, cure, cure.To!.Value))];
        return new AxisAdvice
        {
            Axis = axis,
            Cures = From(result.Diagnosis?.Cures),
            Pairs = [.. (result.Diagnosis?.Cures.Pairs ?? []).Select(pair => CureAdvices.Pair(report, axis, pair))],
            Lifts = From(result.Lifts),
            Settles = result.Outcome.Verdict == Verdict.DoesNotSettle ? UnsettledText.Candidates(report, result.Outcome) : [],
            Savings = WasteText.Candidates(report.Setup, result.Outcome),
        };
    }
}
