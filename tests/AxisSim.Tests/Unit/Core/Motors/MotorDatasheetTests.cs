using AxisSim.Core.Motors;

namespace AxisSim.Tests.Unit.Core.Motors;

/// <summary>Half-coil figures to wired figures: a table by hand, and what must not change.</summary>
public sealed class MotorDatasheetTests
{
    private const double Rounding = 1e-14;

    private static readonly StepperMotor HalfCoil = new()
    {
        StepsPerRevolution = 200, HoldingTorqueNewtonMetres = 1.0, RatedCurrentAmperes = 2.0, ResistanceOhms = 3.0, InductanceHenries = 4e-3,
        RotorInertiaKilogramSquareMetres = 2e-5, DetentTorqueNewtonMetres = 0.04,
    };

    [Fact]
    public void Series_and_parallel_by_hand()
    {
        StepperMotor series = MotorDatasheet.Wire(HalfCoil, MotorWiring.BipolarSeries), parallel = MotorDatasheet.Wire(HalfCoil, MotorWiring.BipolarParallel);
        Assert.Equal((6.0, 0.016), (series.ResistanceOhms, series.InductanceHenries));
        Assert.Equal((1.5, 0.004), (parallel.ResistanceOhms, parallel.InductanceHenries));
        Assert.Equal(1.4142135623730951, series.RatedCurrentAmperes, 14);
        Assert.Equal(2.8284271247461903, parallel.RatedCurrentAmperes, 14);
        Assert.Equal(1.4142135623730951, series.HoldingTorqueNewtonMetres, 14);
        Assert.Equal(1.4142135623730951, parallel.HoldingTorqueNewtonMetres, 14);
        Assert.Equal(HalfCoil, MotorDatasheet.Wire(HalfCoil, MotorWiring.HalfCoil));
    }

    [Theory]
    [InlineData(MotorWiring.BipolarSeries, 2.0)] // twice the turns carry the current
    [InlineData(MotorWiring.BipolarParallel, 1.0)] // the current is shared by two windings of the same turns
    public void Torque_constant_follows_the_turns(MotorWiring wiring, double factor)
    {
        double ratio = MotorDatasheet.Wire(HalfCoil, wiring).TorqueConstantNewtonMetresPerAmpere / HalfCoil.TorqueConstantNewtonMetresPerAmpere;
        Assert.InRange(ratio, factor * (1 - Rounding), factor * (1 + Rounding));
    }

    [Theory]
    [InlineData(MotorWiring.BipolarSeries)]
    [InlineData(MotorWiring.BipolarParallel)]
    public void Copper_loss_at_rated_current_and_the_time_constant_ratio_hold(MotorWiring wiring)
    {
        StepperMotor wired = MotorDatasheet.Wire(HalfCoil, wiring);
        double loss = wired.RatedCurrentAmperes * wired.RatedCurrentAmperes * wired.ResistanceOhms;
        Assert.InRange(loss / 12.0, 1 - Rounding, 1 + Rounding);
        // Both wirings have twice the L/R of a half coil, and the same as each other: the same copper carries the same flux.
        double timeConstant = wired.InductanceHenries / wired.ResistanceOhms;
        Assert.InRange(timeConstant / (2.0 * 4e-3 / 3.0), 1 - Rounding, 1 + Rounding);
        Assert.Equal(HalfCoil.ThermalResistanceKelvinPerWatt, wired.ThermalResistanceKelvinPerWatt, 12);
        Assert.Equal((HalfCoil.DetentTorqueNewtonMetres, HalfCoil.RotorInertiaKilogramSquareMetres), (wired.DetentTorqueNewtonMetres, wired.RotorInertiaKilogramSquareMetres));
    }
}
