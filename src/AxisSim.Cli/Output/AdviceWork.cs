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

    /// <summary>The advice for every axis of a report, as a question.</summary>
    public static Asked<IReadOnlyList<AxisAdvice>> Ask(Scenario scenario, MoveReport report)
    {
        AxisAdvice[] drafts = Drafts(report);
        (int Draft, Func<AxisAdvice, IReadOnlyList<CureAdvice>> Part, double Factor)[] parts =
        [
            .. from i in Enumerable.Range(0, drafts.Length)
               from part in Parts
               select (i, part.Of, part.Factor),
        ];
        (int Draft, int Part, CureAdvice Advice, double Factor)[] asked = [.. parts.SelectMany((part, p) => part.Part(drafts[part.Draft]).Where(advice => advice.Settings.Count > 0).Select(advice => (part.Draft, p % Parts.Length, advice, part.Factor)))];
        int[] also = [.. Enumerable.Range(0, asked.Length).Where(k => asked[k].Advice.Also.Count > 0)];
        Asked<bool[]> trial = TypedTrial.Ask(
            scenario,
            [
                .. asked.Select(one => new Promise(drafts[one.Draft].Axis, one.Advice.Settings, one.Factor)),
                .. also.Select(k => new Promise(drafts[asked[k].Draft].Axis, asked[k].Advice.Also, asked[k].Factor)),
            ]);
        return new Asked<IReadOnlyList<AxisAdvice>>(trial.Cases, results => Told(drafts, asked, also, trial.Answer(results)));
    }

    private static AxisAdvice[] Told(AxisAdvice[] drafts, (int Draft, int Part, CureAdvice Advice, double Factor)[] asked, int[] also, bool[] holds)
    {
        CureAdvice? Kept(int draft, int part, CureAdvice advice)
        {
            int k = Array.FindIndex(asked, one => one.Draft == draft && one.Part == part && ReferenceEquals(one.Advice, advice));
            int more = Array.IndexOf(also, k);
            return k < 0 || (holds[k] && (more < 0 || holds[asked.Length + more])) ? advice : holds[k] ? advice.Without : null;
        }

        CureAdvice[] OfPart(int draft, int part, IReadOnlyList<CureAdvice> advice) => [.. advice.Select(one => Kept(draft, part, one)).OfType<CureAdvice>()];
        return [.. drafts.Select((draft, i) => draft with
        {
            Cures = OfPart(i, 0, draft.Cures),
            Pairs = OfPart(i, 1, draft.Pairs),
            Lifts = OfPart(i, 2, draft.Lifts),
            Settles = OfPart(i, 3, draft.Settles),
            Savings = OfPart(i, 4, draft.Savings),
            Watches = OfPart(i, 5, draft.Watches),
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
        (advice => advice.Watches, Nominal),
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
            Watches = LateText.Candidates(report.Setup.Move, result.Outcome),
        };
    }
}
