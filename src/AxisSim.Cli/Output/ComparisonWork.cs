using AxisSim.Cli.Input;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Puts the candidates of a comparison together and has them compared with a line of progress.</summary>
internal sealed class ComparisonWork(Scenario scenario, IReadOnlyList<MotorChoice> motors, IReadOnlyList<double?> ratios, IReadOnlyList<double?> voltages)
{
    private readonly MountSetup mount = scenario.Setup;

    /// <summary>The resolution is the round number at or below this share of the rate in the file: below it no difference would be worth a motor.</summary>
    private const double ResolutionShare = 0.01;

    public required string File { get; init; }

    public required LaidOver Laid { get; init; }

    public required double Margin { get; init; }

    public required double CurrentShare { get; init; }

    public required int Threads { get; init; }

    public required bool All { get; init; }

    public required IReadOnlyList<MeasuredFit> Fits { get; init; }

    /// <summary>The comparison.</summary>
    public ComparisonReport Run(Host host, IReadOnlyList<MountAxis> axes)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        double resolution = EnvelopeWork.RoundRate(axes.Min(axis => mount.Axis(axis).Motion.SlewRateRadiansPerSecond), ResolutionShare);
        Candidate[] candidates = [.. MeasuredInput.Apply(motors, Fits).SelectMany(motor => ratios.SelectMany(ratio => voltages.Select(volts => new Candidate(motor, ratio, volts))))];
        var options = new ComparisonOptions
        {
            LoadFactor = 1.0 + Margin,
            CurrentShare = CurrentShare,
            ResolutionRadiansPerSecond = resolution,
            All = All,
            Threads = Threads,
            Stop = host.Stop,
            Progress = share => progress.Report("compare", "searching the greatest safe rate of each candidate", share),
        };
        Task<IReadOnlyList<CandidateResult>> work = Task.Run(() => ComparisonStudy.Run(mount, axes, candidates, options), host.Stop);
        work.Wait(host.Stop);
        return ComparisonTrial.Of(scenario, new ComparisonReport
        {
            File = File, Laid = Laid, Mount = mount, Axes = axes, Margin = Margin, CurrentShare = CurrentShare, ResolutionRadiansPerSecond = resolution, Results = work.Result, Fits = Fits, Datasheets = motors,
        }, new QuestionOptions { Threads = Threads, Stop = host.Stop });
    }
}
