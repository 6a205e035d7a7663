using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Docs;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>What to expect at the first power-on, against the simulation and by hand.</summary>
public sealed class PowerOnStudyTests
{
    private const double Rounding = 1e-12;

    /// <summary>At rest the simulated winding is as warm as its slew left it, and the capacitor still settles: a per cent of the current.</summary>
    private const double RestShare = 0.01;

    [Fact]
    public void A_supply_with_a_resistance_gives_power_and_loss_together()
    {
        ChopperDrive drive = Shipped.Read("heavy-reflector").Setup.Polar!.Drive;
        double amperes = SupplyLaw.Amperes(drive, 20.0);
        Assert.Equal(20.0, amperes * (drive.SupplyVolts - (drive.SupplyResistanceOhms * amperes)), 20.0 * Rounding);
        Assert.Equal(20.0 / drive.SupplyVolts, SupplyLaw.Amperes(drive with { SupplyResistanceOhms = 0.0 }, 20.0), Rounding);
        Assert.True(double.IsNaN(SupplyLaw.Amperes(drive, 300.0))); // 12.8^2/(4 * 0.2) = 205 W at most
    }

    [Theory]
    [InlineData("heavy-reflector", MountAxis.Declination)]
    [InlineData("light-refractor", MountAxis.Declination)]
    [Trait("speed", "slow")]
    public void Current_at_rest_is_what_the_simulation_draws_there(string name, MountAxis axis)
    {
        MountSetup setup = Shipped.Read(name, "move.observe=15 s").Setup;
        AxisResult result = MoveStudy.Run(setup, axis, new MoveOptions { Explain = false });
        AxisModel model = setup.Axis(axis);
        double expected = PowerOnStudy.SupplyAmperes(model, model.Drive.HoldingCurrentAmperes, result.Outcome.Power.EndCelsius);
        Assert.Equal(result.Trace[TraceQuantity.SupplyCurrentAmperes].Mean[^1], expected, RestShare * expected);
    }

    [Fact]
    public void A_slower_mount_keeps_the_time_of_its_ramps()
    {
        MountSetup setup = Shipped.Read("light-refractor").Setup, slow = PowerOnStudy.Slowed(setup, 0.25);
        foreach (MountAxis axis in new[] { MountAxis.Polar, MountAxis.Declination })
        {
            Assert.Equal(setup.Axis(axis).Motion.RampInUseSeconds, slow.Axis(axis).Motion.RampInUseSeconds, Rounding);
            Assert.Equal(0.25 * setup.Axis(axis).Motion.SlewRateRadiansPerSecond, slow.Axis(axis).Motion.SlewRateRadiansPerSecond, Rounding);
            Assert.Equal(0.25 * setup.Axis(axis).Motion.PeakAcceleration, slow.Axis(axis).Motion.PeakAcceleration, Rounding);
        }

        // A start rate that stayed would pass a slow slew rate.
        AxisModel polar = setup.Polar!;
        MountSetup jumping = setup.With(MountAxis.Polar, polar with { Motion = polar.Motion with { StartRateRadiansPerSecond = 0.4 * polar.Motion.SlewRateRadiansPerSecond } });
        AxisModel slower = PowerOnStudy.Slowed(jumping, 0.25).Polar!;
        Assert.Equal(0.4 * slower.Motion.SlewRateRadiansPerSecond, slower.Motion.StartRateRadiansPerSecond, Rounding);
        Assert.Equal(jumping.Polar!.Motion.RampInUseSeconds, slower.Motion.RampInUseSeconds, Rounding);
        Assert.Null(PowerOnStudy.Slowed(setup with { Declination = null }, 0.5).Declination);
    }
}
