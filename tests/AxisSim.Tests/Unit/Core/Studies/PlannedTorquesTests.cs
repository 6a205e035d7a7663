using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

public sealed class PlannedTorquesTests
{
    private const double Rounding = 1e-12;

    // Of the greatest torque: the need lies on straight lines between steps of a thirtieth of a swing.
    private const double Straight = 0.01;

    /// <summary>At any time of a move that speeds up, passes the changeover, slews and stops: the curve's own answer, and the need of the run between its steps; long after the slew, the quasi-static one.</summary>
    [Fact]
    public void What_the_motor_has_and_needs_is_what_curve_and_run_say()
    {
        MountSetup setup = BenchmarkCase.Slew(-4.0);
        var plan = new MovePlan(setup);
        TorqueSpeedCurves curves = CurveStudy.ForMove(setup, MountAxis.Polar, plan);
        var torques = new PlannedTorques(setup, MountAxis.Polar, plan, curves);
        double changeover = setup.Axis(MountAxis.Polar).Drive.ChangeoverRadiansPerSecond;
        double ratio = setup.Axis(MountAxis.Polar).Train.TotalRatio;
        NeedPoint[] run = [.. new NeedRun(setup, MountAxis.Polar, plan).Until(plan.SlewSeconds)];
        double most = run.Max(point => Math.Abs(point.TorqueNewtonMetres));
        Assert.InRange(torques.SmoothSeconds, 0.5 * (run[1].TimeSeconds - run[0].TimeSeconds), 2.0 * (run[1].TimeSeconds - run[0].TimeSeconds));
        int full = 0;
        for (int i = 1; i < run.Length; i += 7)
        {
            double speed = Math.Abs(plan.At(MountAxis.Polar).Velocity(run[i].TimeSeconds)) * ratio;
            bool fullStepping = speed > changeover;
            full += fullStepping ? 1 : 0;
            (double needed, double available) = torques.At(run[i].TimeSeconds);
            Assert.Equal(curves.At(fullStepping, speed).LeastNewtonMetres, available, Rounding);
            Assert.Equal(run[i].TorqueNewtonMetres, needed, Straight * most);
        }

        Assert.InRange(full, run.Length / 70, run.Length / 7);
        double late = (3.0 * plan.SlewSeconds) + 11.0;
        Assert.Equal(new ShaftNeed(setup, MountAxis.Polar, plan).At(late).Torque, torques.At(late).Needed);
    }
}
