using AxisSim.Core.Gearing;
using AxisSim.Core.Payloads;

namespace AxisSim.Tests.Published;

/// <summary>Inertia: textbook formulas (from memory), reflection through a gear, matching of motor and load.</summary>
public sealed class InertiaFormulas
{
    private const double Rounding = 1e-12;

    [Fact]
    public void Disc_rod_and_plate()
    {
        // Textbook: disc m r2/2; rod m L2/12; plate m (a2 + b2)/12; parallel axis + m d2.
        PayloadBody disc = new() { Name = "disc", Shape = BodyShape.Cylinder, MassKilograms = 3.0, OutMetres = 0.0, DiameterMetres = 0.4 };
        Assert.Equal(3.0 * 0.04 / 2.0, BodyInertia.AboutCentre(disc).ForwardForward, Rounding);
        PayloadBody rod = disc with { DiameterMetres = 0.0, LengthMetres = 1.2 };
        Assert.Equal(3.0 * 1.44 / 12.0, BodyInertia.AboutCentre(rod).OutOut, Rounding);
        Assert.Equal(3.0 * 1.44 / 12.0, BodyInertia.AboutCentre(rod).SideSide, Rounding);
        PayloadBody plate = rod with { Shape = BodyShape.Box, LengthMetres = 0.0, WidthMetres = 0.3, HeightMetres = 0.5 };
        Assert.Equal(3.0 * (0.09 + 0.25) / 12.0, BodyInertia.AboutCentre(plate).ForwardForward, Rounding);
        Assert.Equal((3.0 * 1.44 / 12.0) + (3.0 * 0.25), BodyInertia.AboutOrigin(rod with { OutMetres = 0.5 }).SideSide, Rounding);
        // A thin rod about its end: m L2/3.
        Assert.Equal(3.0 * 1.44 / 3.0, BodyInertia.AboutOrigin(rod with { ForwardMetres = 0.6 }).OutOut, Rounding);
    }

    [Fact]
    public void Thin_walled_tube()
    {
        // Textbook: thin hoop m r2 about its axis; half of it across.
        PayloadBody hoop = new() { Name = "hoop", Shape = BodyShape.Tube, MassKilograms = 2.0, OutMetres = 0.0, DiameterMetres = 0.5, InnerDiameterMetres = 0.5 };
        Assert.Equal(2.0 * 0.0625, BodyInertia.AboutCentre(hoop).ForwardForward, Rounding);
        Assert.Equal(2.0 * 0.0625 / 2.0, BodyInertia.AboutCentre(hoop).OutOut, Rounding);
    }

    [Fact]
    public void Load_reflected_through_a_gear()
    {
        // Nise, Control Systems Engineering, example 2.23 (from memory): Ja 5, JL 700, gear 10: Jm = 5 + 700/100 = 12 kg m2.
        GearTrain gear = new() { Worm = new() { WheelTeeth = 10 }, StiffnessNewtonMetresPerRadian = 1.0 };
        Assert.Equal(12.0, 5.0 + gear.ReflectedToMotor(700.0), Rounding);
    }

    [Fact]
    public void Matched_reduction()
    {
        // Petersen, Trans. ASME 76 (1954) 493: sqrt(JL/JM); 4 and 1e-4 kg m2 give 200 (derived).
        Assert.Equal(200.0, InertiaMatch.OptimumRatio(4.0, 1e-4), 1e-10);
        // With a load torque, TL/Tm + sqrt((TL/Tm)2 + JL/JM): 30 and 0.2 N m give 150 + 250 = 400 (derived).
        Assert.Equal(400.0, InertiaMatch.OptimumRatio(4.0, 1e-4, 30.0, 0.2), 1e-10);
    }
}
