using AxisSim.Core.Mount;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Currents at rest and while tracking, against paper.</summary>
public sealed class HoldingCurrentTests
{
    private static readonly Tolerances None = new() { ImbalanceShare = 0.0, FrictionShare = 0.0, ColdShare = 0.0, MotorTorqueShare = 0.0 };

    /// <summary>
    /// Benchmark case with 100 N m of gravity: (100 + 0.8)/(720 x 0.45) = 0.3111 N m, 1.3 times that and 5 mN m: 0.4094 N m over Km = 0.4/(sqrt 2 x 1.5) = 0.18856: 2.171 A, above the
    /// rated 1.5 A; with 20 N m: 0.0885 N m, 0.469 A. The worm locks and holds it.
    /// </summary>
    [Theory]
    [InlineData(100.0, 1.5, CurrentReason.Capped)]
    [InlineData(20.0, 0.47, CurrentReason.Torque)]
    [InlineData(0.0, 0.375, CurrentReason.Least)]
    public void Tracking_lifts_and_rubs(double gravity, double amperes, CurrentReason reason)
    {
        HoldingCurrents currents = Of(gravity, "settling.tolerance=60 arcsec");
        Assert.Equal(amperes, currents.TrackingAmperes, 1e-9);
        Assert.Equal(reason, currents.TrackingReason);
        Assert.True(currents.WormHolds);
        Assert.Equal(0.0, currents.HoldingTorqueNewtonMetres);
        Assert.Equal(0.375, currents.HoldingAmperes, 1e-9);
    }

    /// <summary>With a worm that back-drives at 0.7: 1.3 x 20 x 0.7/720 = 25.3 mN m.</summary>
    [Fact]
    public void Without_a_locking_worm_the_motor_holds()
    {
        HoldingCurrents currents = Of(20.0, "polar.worm.efficiency=0.8", "polar.worm.back_efficiency=0.7", "settling.tolerance=60 arcsec");
        Assert.False(currents.WormHolds);
        Assert.Equal(1.3 * 20.0 * 0.7 / 720.0, currents.HoldingTorqueNewtonMetres, 1e-9);
    }

    /// <summary>Detent torque 15 mN m, 1 arcsec at the axis = 100 x 720 x 4.848e-6 = 0.349 rad electrical: 0.015/(0.18856 sin 0.349) = 0.2326 A; at half that 0.459 A.</summary>
    [Fact]
    public void A_fine_tolerance_asks_for_current_against_the_detent_torque()
    {
        HoldingCurrents currents = Of(0.0, "settling.tolerance=0.5 arcsec");
        Assert.Equal(0.459, currents.HoldingAmperes, 1.1e-3);
        Assert.Equal(CurrentReason.Resolution, currents.HoldingReason);
    }

    private static HoldingCurrents Of(double gravity, params string[] settings)
    {
        MountSetup read = Setups.Of("nominal", settings);
        MountSetup setup = read with { Load = read.Load with { PolarGravity = [gravity, 0.0, 0.0, 0.0, 0.0, 0.0] } };
        var move = new CheckMove(CheckMoveKind.OpposedAtStart, MountAxis.Polar, PierSide.West, default, new MountPose(0.5, 0.0));
        return HoldingCurrents.Of(setup, MountAxis.Polar, [move], None, 1.3, 1.5);
    }
}
