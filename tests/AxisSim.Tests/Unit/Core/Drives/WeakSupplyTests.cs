using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Drives;

/// <summary>Supplies that are too weak for the drive, and capacitors that are too small for the step.</summary>
public sealed class WeakSupplyTests
{
    /// <summary>The step that is chosen against a quarter of it, V; measured 0.02 V, times three.</summary>
    private const double PeakVolts = 0.06;

    private static readonly AxisModel s_axis = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.2) } };

    [Theory]
    [InlineData(0.05, 0.5)]
    [InlineData(0.05, 0.01)]
    [InlineData(1.0, 0.5)]
    [InlineData(1.0, 100.0)]
    [InlineData(24.0, 100.0)]
    public void A_supply_that_cannot_feed_the_drive_stalls_the_motor_and_stays_between_nothing_and_itself(double volts, double ohms)
    {
        AxisResult result = Run(s_axis.Drive with { SupplyVolts = volts, SupplyResistanceOhms = ohms }, StepChoice.DefaultSeconds);
        Assert.Null(result.Broken);
        Assert.Equal(Verdict.Stalls, result.Outcome.Verdict);
        Assert.InRange(result.Outcome.Power.LowestBusVolts, 0.0, volts);

        // With the rotor dragged about, the motor feeds back: by less than the energy of its coils and rotor, far from a runaway.
        Assert.InRange(result.Outcome.Power.HighestBusVolts, 0.9 * volts, volts + 5.0);
    }

    [Fact]
    public void The_bus_law_itself_never_falls_below_zero()
    {
        const double Step = 50e-6, Watts = 36.0;
        var bus = new SupplyBus(new ChopperDrive { SupplyVolts = 1.0, SupplyResistanceOhms = 0.5, SlewCurrentAmperes = 1.0, TrackingCurrentAmperes = 1.0, HoldingCurrentAmperes = 1.0, MicrostepsPerFullStep = 16 }, Step);
        for (int i = 0; i < 1000; i++)
        {
            bus.Take(i % 7 == 0 ? -Watts : Watts, Step);
            Assert.InRange(bus.Volts, 0.0, 100.0);
            Assert.True(bus.MidVolts >= 0.0, $"step {i}: {bus.MidVolts} V");
        }
    }

    [Theory]
    [InlineData(1000e-6, 0.3, 50e-6)]
    [InlineData(10e-6, 0.3, 25e-6)]
    [InlineData(1e-6, 0.3, 2.5e-6)]
    [InlineData(1e-6, 0.0, 50e-6)]
    public void The_step_follows_what_the_phase_currents_can_do_to_the_bus(double farads, double ohms, double step)
    {
        // Paper: 2 x 1.5 A / (C x 24 V) x h <= 0.38, so h <= 3.04 s/F x C: 3.04 ms, 30.4 us and 3.04 us; an ideal supply has no such limit.
        AxisModel axis = s_axis with { Drive = s_axis.Drive with { BusCapacitanceFarads = farads, SupplyResistanceOhms = ohms } };
        StepChoice choice = StepChoice.For(BenchmarkCase.Setup(axis, 0.0, BenchmarkCase.Degree, 0.5), MountAxis.Polar, StepChoice.DefaultSeconds);
        Assert.Equal((step, true), (choice.StepSeconds, choice.Workable));
    }

    [Fact]
    public void The_peak_of_a_small_bus_is_the_same_at_a_quarter_of_the_step()
    {
        ChopperDrive drive = s_axis.Drive with { BusCapacitanceFarads = 20e-6, SupplyResistanceOhms = 0.3 };
        AxisResult chosen = Run(drive, StepChoice.DefaultSeconds), finer = Run(drive, 0.25 * StepChoice.DefaultSeconds);
        Assert.True(finer.Step.StepSeconds < 0.5 * chosen.Step.StepSeconds);
        Assert.True(chosen.Outcome.Power.HighestBusVolts > 24.5, "nothing was fed back");
        Assert.Equal(finer.Outcome.Power.HighestBusVolts, chosen.Outcome.Power.HighestBusVolts, PeakVolts);
    }

    private static AxisResult Run(ChopperDrive drive, double step) =>
        MoveStudy.Run(BenchmarkCase.Setup(s_axis with { Drive = drive }, 0.0, BenchmarkCase.Degree, 0.5), MountAxis.Polar, new MoveOptions { StepSeconds = step, Explain = false });
}
