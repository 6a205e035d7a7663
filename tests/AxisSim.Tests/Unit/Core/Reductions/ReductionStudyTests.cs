using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Reductions;

/// <summary>The lesson's study against other parts of the program and against paper.</summary>
public sealed class ReductionStudyTests
{
    private const double Degree = Math.PI / 180.0;

    // Of the search for a rate: marks that differ by 2.5 at the most, 32 places from one to the next.
    private const double Tolerance = 0.03;

    // A short move about both axes; fewer microsteps, so that the controller's pulses do not hide the motor.
    private static readonly string[] Short = ["move.end_polar=-11 deg", "move.end_declination=13 deg", "polar.drive.microsteps=16"];
    private static readonly MountSetup Heavy = Read("heavy-reflector-stalls.toml", Short);
    private static readonly MountSetup Fair = Read("heavy-reflector.toml");

    private static readonly Lazy<ReductionResult> s_three = new(() => Run(Heavy, 0.0, 0, 108.0, 432.0));

    [Fact]
    [Trait("speed", "slow")]
    public void Without_margin_the_own_rate_is_that_of_the_envelope()
    {
        // The envelope is known to its resolution of 0.05 deg/s in some 3.5, the lesson to 2 %; both err on the safe side.
        double resolution = 0.05 * Degree;
        GreatestRate envelope = Assert.Single(EnvelopeStudy.Run([new EnvelopeCase(Heavy, Heavy.Polar!.Motion.RampInUseSeconds)], MountAxis.Polar, new EnvelopeOptions { ResolutionRadiansPerSecond = resolution }));
        double rate = s_three.Value.Own.SafeRateRadiansPerSecond;
        Assert.InRange(rate, envelope.RateRadiansPerSecond / (1.0 + Tolerance), envelope.RateRadiansPerSecond + resolution);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Safe_rates_and_accelerations_arrive_and_the_next_fail()
    {
        foreach (ReductionPoint point in s_three.Value.Points.Where(point => double.IsFinite(point.SafeRateRadiansPerSecond)))
        {
            var law = new ReductionLaw(Heavy, MountAxis.Polar, 0.0);
            var work = new ReductionWork(Heavy, MountAxis.Polar, law, point.Facts.TotalReduction, 0.0);
            Assert.Equal(BatchEnd.Arrives, End(work.AtRate(point.SafeRateRadiansPerSecond)));
            if (double.IsFinite(point.FirstFailingRateRadiansPerSecond))
            {
                Assert.NotEqual(BatchEnd.Arrives, End(work.AtRate(point.FirstFailingRateRadiansPerSecond)));
                Assert.NotNull(point.Shares);
            }
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void A_margin_takes_from_rate_and_acceleration()
    {
        ReductionPoint with = Run(Heavy, 0.1, 0).Own, without = s_three.Value.Own;
        Assert.InRange(with.SafeRateRadiansPerSecond, 0.1 * Degree, without.SafeRateRadiansPerSecond);
        Assert.True(with.SafeAccelerationRadiansPerSecondSquared < without.SafeAccelerationRadiansPerSecondSquared);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Threads_change_nothing_and_the_own_reduction_is_added()
    {
        ReductionResult one = Run(Heavy, 0.0, 1, 108.0, 432.0);
        Assert.Equal(s_three.Value.Points, one.Points);
        Assert.Equal([108.0, 216.0, 432.0], one.Points.Select(point => point.Facts.TotalReduction));
        Assert.Equal(216.0, one.Own.Facts.TotalReduction);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void The_own_move_is_that_of_the_simulation()
    {
        AxisResult move = MoveStudy.Run(Heavy, MountAxis.Polar, new MoveOptions());
        ReductionPoint own = s_three.Value.Own;
        Assert.Equal((move.Outcome.Verdict, move.Outcome.Margin.Value, move.Outcome.LoadFactor), (own.OwnMove, own.OwnMargin, own.OwnLoadFactor));
    }

    [Fact]
    public void Closed_forms_at_216_are_those_of_paper()
    {
        // 216 x 0.4159 x 0.97 = 87.1; Km I - friction = 0.1838 x 0.9 - 0.004 = 0.1615 N m: 14.07 N m at the axis.
        ReductionFacts own = new ReductionLaw(Fair, MountAxis.Polar, 0.3).At(216.0);
        Assert.Equal(14.07, own.TorqueAtRestNewtonMetres, 0.02);

        // 360 x 3600 / 400 / 216 = 15 arcsec a full step, 64 microsteps in it; 3 deg/s are 46.1 kHz.
        Assert.Equal(15.0, own.FullStepRadians / Degree * 3600.0, 1e-9);
        Assert.Equal(15.0 / 64.0, own.MicrostepRadians / Degree * 3600.0, 1e-9);
        Assert.Equal(46080.0, own.PulsesPerSecond, 1e-6);

        // (1.2/87.1 + 0.004)/0.1655 = 0.1074; asin 0.1076 rad / 100 teeth / 216 = 4.98 urad = 1.03 arcsec.
        Assert.Equal(1.03, own.FrictionLagRadians / Degree * 3600.0, 0.005);
    }

    [Fact]
    public void The_edges_of_the_window_are_edges()
    {
        ReductionWindow window = ReductionWindow.Of(Fair, MountAxis.Polar, 0.3);
        var law = new ReductionLaw(Fair, MountAxis.Polar, 0.3);
        double rate = Fair.Polar!.Motion.SlewRateRadiansPerSecond, asked = Fair.Polar.Motion.PeakAcceleration, band = Fair.Move.SettleToleranceRadians;
        const double beyond = 1.0 + 1e-6;

        // 100 kHz / 64 / 400 / (3/360) = 468.75; 360 x 3600 / 400 / 64 / 2 arcsec = 25.3.
        Assert.Equal(468.75, window.MostByPulses, 1e-9);
        Assert.Equal(25.3125, window.LeastByMicrostep, 1e-9);
        Assert.True(law.FrictionLag(window.LeastByFrictionLag) <= band && !(law.FrictionLag(window.LeastByFrictionLag / beyond) <= band));
        Assert.True(law.Carries(window.MostBySupply, rate) && !law.Carries(window.MostBySupply * beyond, rate));
        Assert.True(law.Match.Acceleration(window.LeastByInertia) >= asked && law.Match.Acceleration(window.LeastByInertia / beyond) < asked);
        Assert.True(law.Match.Acceleration(window.MostByInertia) >= asked && law.Match.Acceleration(window.MostByInertia * beyond) < asked);
        Assert.Equal(0.0, law.Match.Acceleration(window.LeastByLoad), 1e-12);
        Assert.Equal((window.LeastByFrictionLag, window.MostByPulses), (window.Least, window.Most));
    }

    [Fact]
    public void Without_enough_torque_a_condition_is_met_by_no_reduction()
    {
        ReductionWindow window = ReductionWindow.Of(Read("heavy-reflector-stalls.toml"), MountAxis.Polar, 0.3);
        Assert.True(double.IsNaN(window.MostBySupply));
        Assert.True(double.IsNaN(window.Most));
    }

    private static BatchEnd End(MountSetup setup) => BatchStudy.Run([new BatchCase(setup, MountAxis.Polar)], new BatchOptions())[0].End;

    private static ReductionResult Run(MountSetup setup, double margin, int threads, params double[] ratios) =>
        ReductionStudy.Run(setup, MountAxis.Polar, new ReductionOptions { TotalRatios = ratios, MarginShare = margin, Threads = threads });

    private static MountSetup Read(string file, params string[] settings) => ScenarioReader.ReadFile(Repository.PathOf("scenarios", file), settings).Scenario!.Setup;
}
