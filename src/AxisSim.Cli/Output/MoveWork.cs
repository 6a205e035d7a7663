using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Payloads;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>What the commands that simulate a move have in common.</summary>
internal static class MoveWork
{
    /// <summary>All that is said about a move.</summary>
    public static MoveReport Report(Scenario scenario, string file, string[] settings, double step, IReadOnlyList<AxisResult> results, CancellationToken stop = default)
    {
        MoveReport report = Bare(scenario, file, settings, step, results);
        var options = new QuestionOptions { StepSeconds = step, Stop = stop };
        var (advice, deciding) = Asked.Run(AdviceWork.Ask(scenario, report), DecidingWork.Ask(scenario, report), options);
        return report with { Advice = advice, Deciding = deciding };
    }

    private static MoveReport Bare(Scenario scenario, string file, string[] settings, double step, IReadOnlyList<AxisResult> results) => new()
    {
        Name = scenario.Name,
        File = file,
        Settings = settings,
        Setup = scenario.Setup,
        Lumped = Loads(scenario),
        Payload = scenario.Payload,
        LatitudeRadians = scenario.LatitudeRadians,
        Notes = scenario.Notes,
        AskedStepSeconds = step,
        Results = results,
    };

    /// <summary>The exit code that says what the prediction is.</summary>
    public static int Code(MoveReport report) =>
        report.Results.Any(result => result.Broken is not null) ? ExitCodes.BadInput
        : report.Results.All(result => result.Outcome.Verdict == Verdict.Arrives) ? ExitCodes.Good
        : ExitCodes.PredictedFailure;

    private static Dictionary<MountAxis, LumpedLoad> Loads(Scenario scenario)
    {
        var loads = new Dictionary<MountAxis, LumpedLoad>();
        if (scenario.PolarLoad is { } polar)
        {
            loads[MountAxis.Polar] = polar;
        }

        if (scenario.DeclinationLoad is { } declination)
        {
            loads[MountAxis.Declination] = declination;
        }

        return loads;
    }
}
