using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;

namespace AxisSim.Tests.Published;

/// <summary>Wind pressure, turbulence, and the generator behind it.</summary>
public sealed class BearingsAndWind
{
    private const double Knot = 1852.0 / 3600.0;
    private const double MilePerHour = 0.44704;
    private const double PoundPerSquareFoot = 47.880258980336;

    [Fact]
    public void Wind_pressure_of_the_building_code()
    {
        // ASCE 7-05 worked example: q = 0.00256 Kz Kd V2 (psf, mph), Kz 0.90, Kd 0.85, 100 mph: 19.58 psf. The code's 0.00256 is
        // 0.5 * 1.225 kg/m3 = 0.002557 rounded to three digits.
        const double RoundedCoefficient = 0.002;
        double pressure = WindTorque.Pressure(1.225, 100.0 * MilePerHour) / PoundPerSquareFoot;
        Assert.Equal(19.58, 0.90 * 0.85 * pressure, RoundedCoefficient * 19.58);
    }

    [Fact]
    public void Drag_coefficient_taken_by_default_is_that_of_bluff_bodies() =>
        Assert.InRange(new Disturbances().DragCoefficient, 1.1, 1.2); // Hoerner, Fluid-Dynamic Drag: plate 1.17-1.2, subcritical cylinder 1.1-1.2 (from memory)

    [Fact]
    public void Turbulence_variance()
    {
        // MIL-F-8785C as in the Modelica Standard Library's DrydenContinuousTurbulence: sigma = 0.1 times 30 kt = 1.543 m/s; the spectrum's integral is sigma2.
        DrydenTurbulence turbulence = new(30.0 * Knot, 0.1, 533.4, 1);
        Assert.Equal(1.543, Math.Sqrt(turbulence.Variance), 5e-4);
    }

    [Fact]
    public void One_minus_cosine_gust()
    {
        // MIL-F-8785C (from memory): V = (Vm/2)(1 - cos(pi x/dm)): half of Vm at half the rise, all of it at dm.
        WindTorque wind = new(new Disturbances { GustMetresPerSecond = 6.0, GustStartSeconds = 0.0, GustSeconds = 2.0 });
        Assert.Equal(3.0, wind.SpeedAt(0.5), 1e-12);
        Assert.Equal(6.0, wind.SpeedAt(1.0), 1e-12);
        Assert.Equal(3.0 * (1.0 - Math.Cos(Math.PI * 0.3)), wind.SpeedAt(0.3), 1e-12);
    }

    [Fact]
    public void SplitMix64_sequence()
    {
        // Sequence for seed 1234567 that implementations of Steele, Lea and Flood (2014) publish (from memory).
        SplitMix64 random = new(1234567);
        Assert.Equal(6457827717110365317UL, random.Next());
        Assert.Equal(3203168211198807973UL, random.Next());
        Assert.Equal(9817491932198370423UL, random.Next());
        Assert.Equal(4593380528125082431UL, random.Next());
        Assert.Equal(16408922859458223821UL, random.Next());
    }
}
