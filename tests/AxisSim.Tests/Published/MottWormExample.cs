using AxisSim.Core.Gearing;

namespace AxisSim.Tests.Published;

/// <summary>
/// A worm of 3 threads and a wheel of 52 teeth: Mott, Machine Elements in Mechanical Design, 4th ed., example 8-7 (p. 343) and the forces
/// and power of p. 480. The book's inches and pounds are kept for forces, which are homogeneous.
/// </summary>
public sealed class MottWormExample
{
    private const double Inch = 0.0254;

    // The book rounds sines and cosines to three digits: 264.4 appears as 265.
    private const double BookRounding = 0.003;

    private const double LeadInches = 3.0 * Math.PI / 6.0;
    private const double WheelDiameterInches = 52.0 / 6.0;

    private static readonly double Lead = WormGeometry.LeadAngle(LeadInches * Inch, 2.0 * Inch);
    private static readonly double Pressure = WormGeometry.NormalPressureAngle(double.DegreesToRadians(20.0), Lead);
    private static readonly WormForces Forces = WormForces.At(4168.0, WheelDiameterInches, Lead, 0.022, Pressure);

    [Fact]
    public void Geometry()
    {
        WormStage worm = new() { Starts = 3, WheelTeeth = 52, LeadAngleRadians = Lead, FrictionCoefficient = 0.022, PressureAngleRadians = Pressure };
        Assert.Equal(14.04, double.RadiansToDegrees(Lead), 0.005);
        Assert.Equal(19.45, double.RadiansToDegrees(Pressure), 0.005);
        Assert.Equal(17.333, worm.Ratio, 0.0005);
        Assert.Equal(101.0, 1750.0 / worm.Ratio, 0.05);
    }

    [Fact]
    public void Sliding_speed()
    {
        double feetPerMinute = WormGeometry.SlidingSpeed(1750.0 * 2.0 * Math.PI / 60.0, 2.0 * Inch, Lead) * 60.0 / (12.0 * Inch);
        Assert.Equal(944.0, feetPerMinute, BookRounding * 944.0);
    }

    [Fact]
    public void Tooth_forces()
    {
        Assert.Equal(962.0, Forces.WheelTangential, BookRounding * 962.0);
        Assert.Equal(265.0, Forces.WheelAxial, BookRounding * 265.0);
        Assert.Equal(352.0, Forces.Radial, BookRounding * 352.0);
    }

    [Fact]
    public void Efficiency_from_friction_equals_that_from_the_forces()
    {
        // Derived from the book's forces: power out over in = tangential force times tan L over the force around the worm, 0.9093; loss 0.666 hp of 6.68 out.
        double efficiency = WormLaw.DrivingEfficiency(Lead, 0.022, Pressure);
        Assert.Equal(0.9093, efficiency, 0.00005);
        Assert.Equal(Forces.WheelTangential * Math.Tan(Lead) / Forces.WheelAxial, efficiency, 1e-12);
        Assert.Equal(0.666, 6.679 * ((1.0 / efficiency) - 1.0), 0.0005);
    }
}
