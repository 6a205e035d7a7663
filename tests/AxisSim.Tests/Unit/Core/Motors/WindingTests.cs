using AxisSim.Core.Motors;

namespace AxisSim.Tests.Unit.Core.Motors;

public sealed class WindingTests
{
    private const double Rounding = 1e-12;

    [Fact]
    public void Heating_in_one_step_equals_heating_in_many()
    {
        double small = 20.0;
        for (int i = 0; i < 600; i++)
        {
            small = Winding.After(small, 20.0, 12.0, 6.0, 1500.0, 1.0);
        }

        // 72 K in the end, 1 - exp(-0.4) = 0.32968 of it after 600 s.
        Assert.Equal(20.0 + (72.0 * 0.32967995396436), Winding.After(20.0, 20.0, 12.0, 6.0, 1500.0, 600.0), 1e-10);
        Assert.Equal(Winding.After(20.0, 20.0, 12.0, 6.0, 1500.0, 600.0), small, 1e-10);
    }

    [Fact]
    public void Continuous_temperature_is_where_loss_and_cooling_meet()
    {
        double end = Winding.ContinuousCelsius(25.0, 6.0, 1.0, 5.0);
        Assert.Equal(25.0 + (5.0 * ((6.0 * Winding.ResistanceFactor(end)) + 1.0)), end, Rounding * 100.0);
        Assert.Equal(end, Winding.After(end, 25.0, (6.0 * Winding.ResistanceFactor(end)) + 1.0, 5.0, 900.0, 1e4), 1e-10);
        // 0.00393 * 5 K/W * 60 W > 1: each kelvin brings more loss than it sheds.
        Assert.Equal(double.PositiveInfinity, Winding.ContinuousCelsius(25.0, 60.0, 0.0, 5.0));
    }

    [Theory]
    [InlineData(6.0, 5.0)]
    [InlineData(0.0, 5.0)]
    [InlineData(50.890585, 5.0)] // 1/(0.00393 * 5): loss and cooling rise alike, so the temperature rises evenly
    [InlineData(60.0, 5.0)] // it runs away
    public void Warming_up_at_a_constant_current_agrees_with_small_steps(double coldWatts, double kelvinPerWatt)
    {
        // Steps of constant loss, taken at mid-step: their error is of second order, 1e-5 of the rise at 1 s of 900 s.
        const double Share = 1e-5;
        double small = 12.0;
        for (int i = 0; i < 600; i++)
        {
            double half = Winding.After(small, 12.0, coldWatts * Winding.ResistanceFactor(small), kelvinPerWatt, 900.0, 0.5);
            small = Winding.After(small, 12.0, coldWatts * Winding.ResistanceFactor(half), kelvinPerWatt, 900.0, 1.0);
        }

        Assert.Equal(small, Winding.WarmedUp(12.0, coldWatts, kelvinPerWatt, 900.0, 600.0), Share * (small - 12.0));
    }

    [Fact]
    public void Warming_up_ends_where_continuous_current_does() =>
        Assert.Equal(Winding.ContinuousCelsius(12.0, 6.0, 0.0, 5.0), Winding.WarmedUp(12.0, 6.0, 5.0, 900.0, 1e6), 1e-9);
}
