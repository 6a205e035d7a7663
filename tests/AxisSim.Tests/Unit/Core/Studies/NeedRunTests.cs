using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>What a planned move needs: quasi-static on a slow plan, with the swing of the axis after a jolt.</summary>
public sealed class NeedRunTests
{
    // Steps of a thirtieth of a swing.
    private const double Share = 0.01;

    // Paper, along the motion: 0.8 N m of friction less, then plus 6 kg m2 x 1.5 deg/s2 = 0.157 N m, over 720 x 45 %, and 6e-6 x 720 x 1.5 deg/s2 = 0.113 mN m of the rotor likewise:
    // from 1.871 mN m as it brakes to 3.067 mN m as it gathers speed.
    [Fact]
    public void The_quasi_static_need_jumps_with_the_acceleration()
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Axis, 0.0, 20.0 * BenchmarkCase.Degree, 1.0);
        var need = new ShaftNeed(setup, MountAxis.Polar, new MovePlan(setup));
        double end = 2.0 + ((20.0 - 6.0) / 3.0);
        double braking = end + 2.0 - 1e-9;
        Assert.Equal(3.067e-3, need.At(1e-9).Torque, Share * 3.067e-3);
        Assert.Equal(1.871e-3, need.At(braking).Torque, Share * 1.871e-3);
    }

    /// <summary>Half a swing after a jump of acceleration an axis with the damping ratio z asks for <c>J a (1 + exp(-pi z/sqrt(1 - z^2)))</c>, the overshoot of a step (textbook).</summary>
    [Fact]
    public void A_trapezoid_asks_for_the_overshoot_of_a_step()
    {
        AxisModel bare = BenchmarkCase.Axis with
        {
            Bearings = new AxisBearings(),
            Train = BenchmarkCase.Axis.Train with
            {
                BacklashRadians = 0.0,
                Worm = BenchmarkCase.Axis.Train.Worm with { PeriodicError = PeriodicError.None, GivenDrivingEfficiency = 1.0, GivenBackDrivingEfficiency = 1.0 },
            },
        };
        MountSetup setup = BenchmarkCase.Setup(bare, 0.0, 20.0 * BenchmarkCase.Degree, 1.0);
        NeedPoint most = new NeedRun(setup, MountAxis.Polar, new MovePlan(setup)).Until(1.0).MaxBy(point => point.TorqueNewtonMetres)!;
        double acceleration = 1.5 * BenchmarkCase.Degree;
        double overshoot = 1.0 + Math.Exp(-Math.PI * 0.05 / Math.Sqrt(1.0 - (0.05 * 0.05)));
        Assert.Equal((6.0 * acceleration / 720.0 * overshoot) + (6e-6 * 720.0 * acceleration), most.TorqueNewtonMetres, Share * most.TorqueNewtonMetres);
        Assert.Equal(Math.PI / Math.Sqrt(2e4 / 6.0), most.TimeSeconds, 0.1 * most.TimeSeconds);
    }

    [Fact]
    public void A_gentle_plan_needs_what_it_needs_quasi_statically()
    {
        AxisModel gentle = BenchmarkCase.Axis with
        {
            Train = BenchmarkCase.Axis.Train with { Worm = BenchmarkCase.Axis.Train.Worm with { PeriodicError = PeriodicError.None } },
            Motion = BenchmarkCase.Axis.Motion with { Ramp = Ramp.OfSeconds(6.0), Shape = RampShape.SCurve, JerkShare = 0.5 },
        };
        MountSetup setup = BenchmarkCase.Setup(gentle, -4.0, 60.0 * BenchmarkCase.Degree, 1.0);
        var plan = new MovePlan(setup);
        var need = new ShaftNeed(setup, MountAxis.Polar, plan);
        NeedPoint[] run = [.. new NeedRun(setup, MountAxis.Polar, plan).Until(plan.SlewSeconds)];
        double most = run.Max(point => point.TorqueNewtonMetres);

        // Once the start from rest has died out (the axis breaks loose with 0.8 N m and swings with a decay of 2.9/s), and before friction lets go at the end.
        foreach (NeedPoint point in run.Where(point => point.TimeSeconds > 3.0 && point.TimeSeconds < plan.SlewSeconds - 1.0))
        {
            Assert.Equal(need.At(point.TimeSeconds).Torque, point.TorqueNewtonMetres, Share * most);
        }
    }

    [Fact]
    public void A_move_that_needs_nothing_needs_no_negative_nothing()
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Axis with { Bearings = new AxisBearings() }, 0.0, -1.0 * BenchmarkCase.Degree, 1.0);
        setup = setup with { Load = setup.Load.Scaled(1.0, 0.0) };
        Assert.DoesNotContain(CurveStudy.Path(setup, MountAxis.Polar, new MovePlan(setup)), point => point.TorqueNewtonMetres == 0.0 && double.IsNegative(point.TorqueNewtonMetres));
    }
}
