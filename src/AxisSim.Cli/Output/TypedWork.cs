using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Bounds;
using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Sheets;

namespace AxisSim.Cli.Output;

/// <summary>Rounds the settings to what a user's own controller takes, and runs the move with both axes as typed.</summary>
internal static class TypedWork
{
    /// <summary>What to type and what comes of it; null when the scenario names no controller.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="results">The move as the scenario has it, axis by axis.</param>
    /// <param name="stop">Ends the work early.</param>
    /// <param name="progress">Called with axis, what is being done, and its share done.</param>
    public static TypedInput? Of(Scenario scenario, IReadOnlyList<AxisResult> results, CancellationToken stop, Action<MountAxis, string, double>? progress = null)
    {
        if (scenario.Controller is not { } controller)
        {
            return null;
        }

        MountAxis[] axes = [.. results.Select(result => result.Outcome.Axis)];
        TypedAxis[] typed = [.. axes.Select(axis => TypedNumbers.Of(scenario.Setup.Axis(axis), controller.Of(axis)))];
        MountSetup setup = axes.Zip(typed).Aggregate(scenario.Setup, (made, pair) => made.With(pair.First, pair.Second.Model));
        if (setup == scenario.Setup)
        {
            // Every number is exact: the move is the one that was run.
            return new TypedInput(controller.Name, typed, results, VerdictText.OfMount(results));
        }

        IReadOnlyList<SetupProblem> problems = SetupChecks.Problems(setup);
        if (problems.Count > 0)
        {
            return new TypedInput(controller.Name, typed, [], "cannot be simulated: " + string.Join("; ", problems.Select(problem => $"{problem.What} {problem.Found}, allowed: {problem.Allowed}")));
        }

        Task<AxisResult>[] runs = [.. axes.Select(axis => Task.Run(
            () => MoveStudy.Run(setup, axis, new MoveOptions
            {
                Stop = stop,
                Progress = (_, share) =>
                {
                    stop.ThrowIfCancellationRequested();
                    progress?.Invoke(axis, "running what is to be typed", share);
                },
            }),
            stop))];
        Task.WaitAll(runs, stop);
        AxisResult[] made = [.. runs.Select(run => run.Result)];
        return new TypedInput(controller.Name, typed, made, VerdictText.OfMount(made));
    }
}
