using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Motors;

/// <summary>How far a field holds its rotor, against closed forms.</summary>
public sealed class FieldHoldTests
{
    private const double Degree = Math.PI / 180.0;

    // Places lie on straight lines between load angles 7.5 degrees apart.
    private const double Place = 0.5 * Degree;

    // Of the pull-out torque: the parabola through three of them.
    private const double Crest = 0.005;

    private static readonly StepperMotor s_motor = BenchmarkCase.Motor;
    private static readonly ChopperDrive s_drive = BenchmarkCase.Drive;

    /// <summary>At rest T = -Km I sin d: from rest under a share of it the rotor may go on to the mirror of that place, pi - asin(share) behind and pi + asin(share) ahead.</summary>
    [Theory]
    [InlineData(0.0, 180.0)]
    [InlineData(0.5, 150.0)]
    [InlineData(0.9, 115.84)]
    [InlineData(-0.5, 210.0)]
    [InlineData(1.0, 90.0)]
    [InlineData(1.5, 90.0)]
    public void A_field_at_rest_holds_to_the_mirror_of_the_place_of_rest(double share, double behind)
    {
        FieldHold field = Field(false, 0.0);
        double greatest = s_motor.TorqueConstantNewtonMetresPerAmpere * s_drive.SlewCurrentAmperes;
        Assert.Equal(greatest, field.GreatestTorque, Crest * greatest);
        Assert.Equal(-greatest, field.LeastTorque, Crest * greatest);
        Assert.Equal(0.0, field.FieldRadians, Place);

        // Near the crest the place moves with the root of the torque: half a per cent is six degrees there.
        double slack = Math.Abs(share) < 0.95 ? Place : 6.0 * Degree;
        Assert.Equal(behind * Degree, (2.0 * Math.PI) - field.Unstable(share * greatest), slack);
        Assert.Equal((360.0 - behind) * Degree, field.Unstable(share * greatest), slack);
    }

    /// <summary>A regulator that lags turns the field back by atan(Nr w tau) and shortens it by the cosine of that.</summary>
    [Fact]
    public void A_lagging_regulator_turns_the_field_back()
    {
        FieldHold field = Field(false, 20.0);
        double lag = Math.Atan(s_motor.RotorTeeth * 20.0 * s_drive.RegulatorSeconds);
        double greatest = s_motor.TorqueConstantNewtonMetresPerAmpere * s_drive.SlewCurrentAmperes * Math.Cos(lag);
        Assert.Equal(greatest, field.GreatestTorque, Crest * greatest);
        Assert.Equal(-lag, field.FieldRadians, Place);
        Assert.Equal(Math.PI + (30.0 * Degree), field.Unstable(0.5 * greatest) - field.FieldRadians, Place);
    }

    /// <summary>The greatest torque is the closed form of the pull-out torque, where the supply limits too.</summary>
    [Theory]
    [InlineData(50.0)]
    [InlineData(100.0)]
    [InlineData(150.0)]
    [InlineData(300.0)]
    public void The_greatest_torque_is_the_pull_out_torque(double speed)
    {
        const double Describing = 0.02; // harmonics that the describing function leaves out
        double closed = PullOutLaw.OnDrive(s_motor with { CoulombTorqueNewtonMetres = 0.0, ViscousNewtonMetreSecondsPerRadian = 0.0 }, s_drive, false, s_drive.SupplyVolts, speed);
        Assert.Equal(closed, Field(false, speed).GreatestTorque, Describing * closed);
    }

    /// <summary>Asked for more current than it ever reaches, a full-stepping drive is a machine on a sine of 4 V/pi: T = A sin(lag - atan(X/R)) - B, A = Km V/Z, B = Km^2 w R/Z^2 (Acarnley), so it holds pi - asin((t + B)/A) - asin(B/A) behind.</summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.05)]
    [InlineData(0.1)]
    public void On_its_voltage_limit_it_holds_less_than_half_a_turn(double load)
    {
        const double Speed = 100.0;
        const double Harmonics = 5.0 * Degree; // of the square wave
        double reactance = s_motor.RotorTeeth * Speed * s_motor.InductanceHenries, impedance = Math.Sqrt((s_motor.ResistanceOhms * s_motor.ResistanceOhms) + (reactance * reactance));
        double km = s_motor.TorqueConstantNewtonMetresPerAmpere, volts = PullOutLaw.SquareWaveFundamental * s_drive.SupplyVolts;
        double a = km * volts / impedance, b = km * km * Speed * s_motor.ResistanceOhms / (impedance * impedance);
        double held = Math.PI - Math.Asin((load + b) / a) - Math.Asin(b / a);
        FieldHold field = new(s_motor, s_drive, 30.0, true, Speed);
        Assert.Equal(held, (2.0 * Math.PI) - (field.Unstable(load) - field.FieldRadians), Harmonics);
    }

    [Fact]
    public void Beyond_all_torque_there_is_no_field()
    {
        var weak = s_drive with { SupplyVolts = 0.5 };
        Assert.False(new FieldHold(s_motor, weak, weak.SlewCurrentAmperes, false, 200.0).Holds);
    }

    private static FieldHold Field(bool full, double speed) => new(s_motor, s_drive, s_drive.SlewCurrentAmperes, full, speed);
}
