using AxisSim.Core.Motors;

namespace AxisSim.Tests.Published;

/// <summary>Static torque of a two-phase stepper: microstep increments, two phases on, resonance.</summary>
public sealed class StepperStatics
{
    private static readonly StepperMotor Motor = new()
    {
        StepsPerRevolution = 200,
        HoldingTorqueNewtonMetres = 0.44,
        RatedCurrentAmperes = 1.7,
        ResistanceOhms = 1.5,
        InductanceHenries = 2.8e-3,
        RotorInertiaKilogramSquareMetres = 5.4e-6,
    };

    [Theory]
    [InlineData(1, 100.0)]
    [InlineData(2, 70.71)]
    [InlineData(4, 38.27)]
    [InlineData(8, 19.51)]
    [InlineData(16, 9.80)]
    [InlineData(32, 4.91)]
    [InlineData(64, 2.45)]
    [InlineData(128, 1.23)]
    [InlineData(256, 0.61)]
    public void Torque_of_one_microstep(int microsteps, double percent) =>
        Assert.Equal(percent, 100.0 * StaticTorque.IncrementShare(microsteps), 0.0051); // motor makers' table of sin(90 degrees/n)

    [Fact]
    public void Two_phases_on_hold_root_two_times_one_phase()
    {
        // Stepper textbooks (Acarnley, Stepping Motors): fields of two equal phases add at right angles, 1.41421 times one.
        double one = StaticTorque.Peak(Motor, 1.7, 0.0);
        double two = StaticTorque.Peak(Motor, 1.7, 1.7);
        Assert.Equal(1.41421, two / one, 5e-6);
        Assert.Equal(0.44, two, 1e-12);
    }

    [Fact]
    public void Rotor_resonance()
    {
        // Jones, "Stepping Motors" (University of Iowa): f = sqrt(N h/J)/(2 pi). By hand: sqrt(50 * 0.44/5.4e-6) = 2018.4 rad/s = 321.2 Hz.
        Assert.Equal(321.2, StaticTorque.ResonanceHertz(Motor, 0.44, 5.4e-6), 0.05);
    }
}
