using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Has a recommendation searched with a line of progress, and runs the scenario again with what came out.</summary>
internal sealed class RecommendWork(Scenario scenario, string file, string[] settings)
{
    /// <summary>The report.</summary>
    public RecommendReport Run(Host host, IReadOnlyList<MountAxis> axes, RecommendOptions options)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<RecommendReport> work = Task.Run(() => Search(axes, options with { Stop = host.Stop, Progress = (doing, share) => progress.Report("recommend", doing, share) }), host.Stop);
        work.Wait(host.Stop);
        return work.Result;
    }

    private RecommendReport Search(IReadOnlyList<MountAxis> axes, RecommendOptions options)
    {
        Recommendation found = RecommendStudy.Run(scenario.Setup, axes, options);

        // Read as the user will read it: what is printed is what is run, for both axes together if they bear it, else for one of them.
        (MountAxis Axis, string[] Settings)[] chosen = [.. found.Axes.Where(axis => axis.Chosen is not null).Select(axis => (axis.Axis, SettingTexts.Of(axis.Axis, axis.Chosen!.Settings).ToArray()))];
        TypedLine[] lines = [.. Sets(chosen).Select(set => new TypedLine([.. set.Select(one => one.Axis)], [.. set.SelectMany(one => one.Settings)]))];
        TypedLine? line = TypedTrial.First(scenario, lines, options.LoadFactor, new QuestionOptions { StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop });
        IReadOnlyList<string> recommended = line?.Settings ?? [];
        MountSetup? again = line is null ? null : scenario.With(recommended).Scenario!.Setup;
        return new RecommendReport
        {
            Name = scenario.Name,
            File = file,
            Settings = settings,
            Aim = options.Aim,
            Margin = Math.Round(options.LoadFactor - 1.0, 12),
            Tolerances = options.Tolerances,
            Coarse = options.Coarse,
            Together = found.Together,
            Recommended = recommended,
            Axes = [.. found.Axes.Select(axis => Advice(axis, line?.Axes.Contains(axis.Axis) == true ? again : null, options.StepSeconds))],
        };
    }

    private static IEnumerable<(MountAxis Axis, string[] Settings)[]> Sets((MountAxis Axis, string[] Settings)[] chosen) =>
        chosen.Length == 0 ? [] : chosen.Length == 1 ? [chosen] : [chosen, .. chosen.Select(one => new[] { one })];

    private RecommendedAxis Advice(AxisRecommendation answer, MountSetup? again, double step)
    {
        AxisSettings now = AxisSettings.Of(scenario.Setup, answer.Axis);
        AxisModel model = scenario.Setup.Axis(answer.Axis);
        if (again is null)
        {
            return new RecommendedAxis(answer, now, model, null, step, step);
        }

        StepChoice choice = MoveStudy.Step(again, answer.Axis, step);
        BatchResult run = BatchStudy.Run([new BatchCase(again, answer.Axis)], new BatchOptions { Depth = BatchDepth.Settling, StepSeconds = step })[0];
        return new RecommendedAxis(answer, now, model, run, step, choice.StepSeconds);
    }
}
