using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Studies;

/// <summary>The path of a move through the torque-speed plane shows the jumps of its need.</summary>
public sealed class PathTests
{
    // Two points this close in time are the two sides of a jump, s.
    private const double Beside = 1e-8;

    // Paper, along the motion: 0.8 N m of friction less, then plus 6 kg m2 x 1.5 deg/s2 = 0.157 N m, over 720 x 45 %, and 6e-6 x 720 x 1.5 deg/s2 = 0.113 mN m of the rotor likewise:
    // from 1.871 to 3.067 mN m, a jump of 1.196 mN m. One per cent is left for the slope of both sides.
    private const double Jump = 1.196e-3;
    private const double JumpShare = 0.01;

    [Theory]
    [InlineData(FollowUp.Rest, 20.0)]
    [InlineData(FollowUp.Sidereal, 20.0)]
    [InlineData(FollowUp.Sidereal, -20.0)]
    public void The_need_jumps_up_within_nanoseconds_of_standstill(FollowUp follow, double degrees)
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Axis, 0.0, degrees * BenchmarkCase.Degree, 1.0);
        setup = setup with { Move = setup.Move with { FollowUp = follow } };
        IReadOnlyList<NeedPoint> path = CurveStudy.ForMove(setup, MountAxis.Polar, new MovePlan(setup)).Path;
        double ramp = path.First(point => point.TimeSeconds > 0.1).TorqueNewtonMetres;

        // Whatever the direction of tracking, the ramp's torque is there as soon as the motion of the slew is.
        NeedPoint first = path.First(point => Math.Abs(point.TorqueNewtonMetres - ramp) < 0.02 * ramp);
        double start = degrees > 0.0 ? 0.0 : SkyRates.MeanSiderealRadiansPerSecond / (1.5 * BenchmarkCase.Degree);
        Assert.InRange(first.TimeSeconds, start - Beside, start + Beside);
        if (degrees < 0.0)
        {
            NeedPoint before = path.Last(point => point.TimeSeconds < first.TimeSeconds);
            Assert.InRange(first.TimeSeconds - before.TimeSeconds, 0.0, Beside);
            Assert.Equal(Jump, first.TorqueNewtonMetres - before.TorqueNewtonMetres, JumpShare * Jump);
        }
    }
}
