using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;
using CsCheck;

namespace AxisSim.Tests.Laws;

/// <summary>Laws that hold for any motor or move.</summary>
public sealed class IdealTests
{
    /// <summary>No load, detent, friction, backlash or periodic error, and the command on a microstep: the axis ends on it.</summary>
    [Fact]
    public void AnIdealAxisEndsOnItsCommand() =>
        (from microsteps in Gen.Int[0, 8].Select(i => 1 << i)
         from fullSteps in Gen.Int[200, 3000]
         from rate in Gen.Double[1.0, 3.0]
         from ramp in Gen.Double[0.15, 0.6]
         select (microsteps, fullSteps, rate, ramp)).Sample(
            g =>
            {
                // 4 full steps make an electrical turn; the start, angle 0, lies on a microstep.
                double distance = g.fullSteps * 2.0 * Math.PI / 400 / 720;
                AxisModel ideal = BenchmarkCase.Axis with
                {
                    Motor = BenchmarkCase.Motor with { DetentTorqueNewtonMetres = 0, CoulombTorqueNewtonMetres = 0 },
                    Drive = BenchmarkCase.Drive with
                    {
                        MicrostepsPerFullStep = g.microsteps,
                        ChangeoverRadiansPerSecond = double.PositiveInfinity,
                        GivenDampingNewtonMetreSecondsPerRadian = 2e-3, // something must calm the rotor; it pulls towards the plan
                    },
                    Train = BenchmarkCase.Axis.Train with { BacklashRadians = 0, Worm = new WormStage { WheelTeeth = 144, GivenDrivingEfficiency = 1.0 } },
                    Bearings = new AxisBearings(),
                    Motion = new AxisMotion { SlewRateRadiansPerSecond = g.rate * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(g.ramp) },
                };
                MountSetup setup = BenchmarkCase.Setup(ideal, 0.0, distance, 4.0);
                var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
                var none = default(NoObserver);
                run.RunTo(run.Plan.EndSeconds, ref none, stopWhenLost: false);
                double error = (run.State.Axis - distance) / BenchmarkCase.Arcsecond;
                Assert.True(Math.Abs(error) < 1e-3, $"error {error} arcsec"); // 4 s of the axis' decay, 2.9 1/s, leave 1e-5 of the ringing
            },
            iter: 25,
            print: g => g.ToString());

    /// <summary>More supply voltage never lowers the closed form's pull-out torque; nor does more current.</summary>
    [Fact]
    public void MoreVoltageNeverLowersThePullOut() =>
        (from km in Gen.Double[0.02, 1.0]
         from resistance in Gen.Double[0.2, 10.0]
         from inductance in Gen.Double[0.5e-3, 20e-3]
         from amperes in Gen.Double[0.2, 6.0]
         from volts in Gen.Double[5.0, 60.0]
         from speed in Gen.Double[0.0, 300.0]
         from more in Gen.Double[1.0, 3.0]
         select (km, resistance, inductance, amperes, volts, speed, more)).Sample(
            g =>
            {
                double torque = PullOutLaw.UnderCurrentAndVoltage(g.km, g.resistance, g.inductance, 50, g.amperes, g.volts, g.speed);
                Assert.True(PullOutLaw.UnderCurrentAndVoltage(g.km, g.resistance, g.inductance, 50, g.amperes, g.more * g.volts, g.speed) >= torque * (1.0 - 1e-12));
                Assert.True(PullOutLaw.UnderCurrentAndVoltage(g.km, g.resistance, g.inductance, 50, g.more * g.amperes, g.volts, g.speed) >= torque * (1.0 - 1e-12));
                Assert.True(torque <= (g.km * g.amperes) + 1e-12);
                Assert.True(torque <= Math.Max(0.0, PullOutLaw.UnderVoltage(g.km, g.resistance, g.inductance, 50, g.volts, g.speed)) + 1e-12);
            },
            iter: 20000,
            print: g => g.ToString());
}
