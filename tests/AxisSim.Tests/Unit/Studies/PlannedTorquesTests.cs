using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Core;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Studies;

public sealed class PlannedTorquesTests
{
    private const double Rounding = 1e-12;

    /// <summary>At any time of a move that speeds up, passes the changeover, slews and stops: the curve's own answer, and the need of the path.</summary>
    [Fact]
    public void What_the_motor_has_is_the_curves_own_answer()
    {
        MountSetup setup = BenchmarkCase.Slew(-4.0);
        var plan = new MovePlan(setup);
        TorqueSpeedCurves curves = CurveStudy.ForMove(setup, MountAxis.Polar, plan);
        var torques = new PlannedTorques(setup, MountAxis.Polar, plan, curves);
        var need = new ShaftNeed(setup, MountAxis.Polar, plan);
        double changeover = setup.Axis(MountAxis.Polar).Drive.ChangeoverRadiansPerSecond;
        int full = 0;
        for (double time = 0.0; time < plan.EndSeconds; time += 0.0137)
        {
            (double speed, double torque) = need.At(time);
            bool fullStepping = Math.Abs(speed) > changeover;
            full += fullStepping ? 1 : 0;
            (double needed, double available) = torques.At(time);
            Assert.Equal(torque, needed);
            Assert.Equal(CurveStudy.Available(curves, fullStepping, Math.Abs(speed)), available, Rounding);
        }

        Assert.InRange(full, 1000, (int)(plan.EndSeconds / 0.0137) - 100);
    }
}
