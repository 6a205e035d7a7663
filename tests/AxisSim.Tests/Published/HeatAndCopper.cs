using AxisSim.Core.Motors;

namespace AxisSim.Tests.Published;

/// <summary>Copper, insulation classes and the one-node law of heating and cooling.</summary>
public sealed class HeatAndCopper
{
    [Fact]
    public void Copper_at_100_degrees()
    {
        // IEC 60028 (in Agrawal, Industrial Power Engineering Handbook, p. 970; NBS Handbook 100): 0.00393/K at 20 degrees.
        Assert.Equal(1.3144, Winding.ResistanceFactor(100.0), 1e-12);
        // The trade's form (234.5 + t)/(234.5 + 20) rounds the inferred zero 234.45: 5e-5 relative.
        Assert.Equal((234.5 + 100.0) / (234.5 + 20.0), Winding.ResistanceFactor(100.0), 7e-5);
        Assert.Equal(0.0, Winding.ResistanceFactor(-234.45), 3e-5);
        Assert.Equal(1.5 * 1.3144, Winding.Resistance(1.5, 100.0), 1e-12);
    }

    [Theory]
    [InlineData(InsulationClass.A, 105.0)]
    [InlineData(InsulationClass.E, 120.0)]
    [InlineData(InsulationClass.B, 130.0)]
    [InlineData(InsulationClass.F, 155.0)]
    [InlineData(InsulationClass.H, 180.0)]
    [InlineData(InsulationClass.N, 200.0)]
    public void Insulation_limit(InsulationClass insulation, double celsius) =>
        Assert.Equal(celsius, insulation.LimitCelsius()); // IEC 60085

    [Theory]
    [InlineData(0.0125, 193.89)]
    [InlineData(0.0325, 128.0)]
    [InlineData(0.05, 109.71)]
    public void Lumped_cooling(double hours, double fahrenheit)
    {
        // Kreith, Principles of Heat Transfer, p. 120, as verification case VM109: C = 2.7046e-4, h A = 2 * 0.0081812 (per F and hour), 300 to 100 F.
        Assert.Equal(fahrenheit, Winding.After(300.0, 100.0, 0.0, 0.0, 2.7046e-4 / (2.0 * 0.0081812), hours), 0.005);
    }

    [Fact]
    public void Two_masses_joined_by_a_conductor()
    {
        // Modelica Standard Library, Thermal TwoMasses, published 336.3296450 K (DASSL, tolerance 1e-6) at 1 s: 15 J/K each, 10 W/K, from 373.15 and 273.15 K.
        // By symmetry the middle of the conductor keeps the mean temperature, so each mass cools to it through half the conductor, 20 W/K: one node.
        const double SolverTolerance = 1e-6 * 373.15;
        Assert.Equal(336.3296450, Winding.After(373.15, 323.15, 0.0, 0.0, 15.0 / 20.0, 1.0), SolverTolerance);
    }
}
