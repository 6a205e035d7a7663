using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>What the search finds against trying everything, one run at a time.</summary>
public sealed class SearchTests
{
    private const double Step = 50e-6;
    private const double Margin = 1.3;
    private const double Resolution = 0.5 * Setups.Degree;
    private static readonly double[] Ramps = [0.2, 0.5, 1.0];
    private static readonly double[] Currents = [0.7, 1.0];

    /// <summary>Every rate of a small grid of ramps and currents by single runs; then the shortest slew with settling among those whose rates all hold from below.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void The_optimum_is_that_of_brute_force()
    {
        // A move of 8 degrees about the polar axis alone.
        MountSetup setup = Setups.Of("heavy-reflector-stalls", "move.end_polar=-13 deg", "move.end_declination=10 deg", "move.follow=rest");
        var move = new CheckMove(CheckMoveKind.OpposedAtStart, MountAxis.Polar, PierSide.West, setup.Move.Start, setup.Move.End);
        LoadCase load = new(move, ToleranceFactors.Nominal);
        AxisSettings own = AxisSettings.Of(setup, MountAxis.Polar);
        AxisSettings[] grid = [.. Currents.SelectMany(current => Ramps.Select(ramp => own with { SlewCurrentAmperes = current, RampSeconds = ramp }))];
        GreatestRate[] found = new RateFinder(new Asker(new QuestionOptions { StepSeconds = Step }), Margin, Resolution).Run([.. grid.Select(settings => new RateQuestion(setup, settings))], [load]);
        var points = new List<FrontPoint>();
        (double Seconds, AxisSettings Settings) best = (double.PositiveInfinity, default);
        for (int i = 0; i < grid.Length; i++)
        {
            int greatest = 0, most = (int)Math.Floor((found[i].TopRadiansPerSecond / Resolution) + 1e-9);
            while (greatest < most && Arrives(setup, load, grid[i] with { SlewRateRadiansPerSecond = (greatest + 1) * Resolution }))
            {
                greatest++;
            }

            Assert.Equal(greatest, double.IsNaN(found[i].RateRadiansPerSecond) ? 0 : (int)Math.Round(found[i].RateRadiansPerSecond / Resolution));
            if (greatest == 0)
            {
                continue;
            }

            AxisSettings settings = grid[i] with { SlewRateRadiansPerSecond = greatest * Resolution };
            AxisOutcome outcome = MoveStudy.Run(settings.Apply(setup, MountAxis.Polar), MountAxis.Polar, new MoveOptions { Explain = false }).Outcome;
            double seconds = outcome.SlewSeconds + (outcome.Settling?.AgainstRestSeconds ?? double.PositiveInfinity);
            best = seconds < best.Seconds ? (seconds, settings) : best;
            BatchResult run = BatchStudy.Run([load.With(setup, settings, 1.0)], new BatchOptions { Depth = BatchDepth.Settling })[0];
            if (run.End == BatchEnd.Arrives)
            {
                points.Add(new FrontPoint(settings, run.SlewSeconds, run.SettleSeconds, Margin, run.ContinuousCelsius));
            }
        }

        Assert.Equal(best.Settings, ParetoFront.Choose(points, RecommendAim.Fastest, Margin)!.Settings);
        Assert.Equal(best.Seconds, ParetoFront.Choose(points, RecommendAim.Fastest, Margin)!.TotalSeconds, 1e-9);
    }

    private static bool Arrives(MountSetup setup, LoadCase load, AxisSettings settings) =>
        ScalarArrival.Of(load.With(setup, settings, Margin, RateFinder.ProbeRadians(settings)).Setup, MountAxis.Polar, Step);
}
