using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>What to set on each axis of a mount.</summary>
/// <param name="Axes">The axes.</param>
/// <param name="Together">Failures among the runs of the scenario's own move at every corner with the margin, both axes set as recommended; 0 when it holds.</param>
public sealed record Recommendation(IReadOnlyList<AxisRecommendation> Axes, int Together);

/// <summary>Finds slew rate, ramp, currents and changeover of each axis by a search over simulations.</summary>
public static class RecommendStudy
{
    private const int MostRounds = 2;

    /// <summary>Recommends for the axes asked for, one after the other, then looks at both together.</summary>
    /// <exception cref="ArgumentException">The setup will not do (<see cref="SetupChecks"/>); the message lists all problems.</exception>
    public static Recommendation Run(MountSetup setup, IReadOnlyList<MountAxis> axes, RecommendOptions options)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.Require(setup, axes, options.StepSeconds);
        var found = new Dictionary<MountAxis, AxisRecommendation>();
        MountSetup now = setup;
        for (int i = 0; i < axes.Count; i++)
        {
            int part = i;
            found[axes[i]] = new AxisSearch(now, axes[i], options with { Progress = (doing, share) => options.Progress?.Invoke($"{Name(axes[part])}: {doing}", (part + share) / axes.Count) }).Run();
            now = Applied(now, found[axes[i]]);
        }

        int together = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            MountAxis[] failing = [.. axes.Where(axis => found[axis].Chosen is not null && Together(now, axis, options) > 0)];
            together = failing.Length;
            if (failing.Length == 0 || options.Coarse)
            {
                break;
            }

            // The move of the scenario is another one now that the other axis has its settings.
            foreach (MountAxis axis in failing)
            {
                found[axis] = new AxisSearch(now, axis, options).Run();
                now = Applied(now, found[axis]);
            }
        }

        return new Recommendation([.. axes.Select(axis => found[axis])], together);
    }

    /// <summary>Failures of the setup's own move with the margin at every corner, and one more if it does not settle as the mount is.</summary>
    public static int Together(MountSetup setup, MountAxis axis, RecommendOptions options)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(options);
        CheckMove own = CheckMoves.Of(setup, axis, options.LatitudeRadians)[0];
        AxisSettings settings = AxisSettings.Of(setup, axis);
        var ask = new Asker(new QuestionOptions { Threads = options.Threads, StepSeconds = options.StepSeconds, Stop = options.Stop });
        bool settles = ask.Ask([new LoadCase(own, ToleranceFactors.Nominal).With(setup, settings, 1.0)], BatchDepth.Settling)[0].End == MoveEnd.Arrives;
        return (settles ? 0 : 1) + ask.Ask([.. Enumerable.Range(0, ToleranceFactors.Corners).Select(mask => new LoadCase(own, ToleranceFactors.Corner(options.Tolerances, mask)).With(setup, settings, options.LoadFactor))])
            .Count(result => result.End != MoveEnd.Arrives);
    }

    private static MountSetup Applied(MountSetup setup, AxisRecommendation axis) => axis.Chosen is { } chosen ? chosen.Settings.Apply(setup, axis.Axis) : setup;

    private static string Name(MountAxis axis) => axis == MountAxis.Polar ? "polar" : "declination";
}
