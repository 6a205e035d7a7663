using AxisSim.Cli.Text.Reductions;
using AxisSim.Cli.Text;
using AxisSim.Core.Mount;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs the lesson on the reduction, axis by axis, with a line of progress.</summary>
internal sealed class LessonWork(string file, LaidOver laid, double marginShare, int threads)
{
    /// <summary>The reports of the axes.</summary>
    public IReadOnlyList<ReductionReport> Run(Host host, MountSetup setup, IReadOnlyList<MountAxis> axes, Func<MountAxis, IReadOnlyList<double>> ratios)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<List<ReductionReport>> work = Task.Run(() => axes.Select(axis => Of(host, setup, axis, ratios(axis), share => progress.Report(axis.Key(), "trying reductions", share))).ToList(), host.Stop);
        work.Wait(host.Stop);
        return work.Result;
    }

    private ReductionReport Of(Host host, MountSetup setup, MountAxis axis, IReadOnlyList<double> ratios, Action<double> progress) =>
        ReductionReport.Of(setup, axis, file, laid, ReductionStudy.Run(setup, axis, new ReductionOptions { TotalRatios = ratios, MarginShare = marginShare, Threads = threads, Stop = host.Stop, Progress = progress }));
}
