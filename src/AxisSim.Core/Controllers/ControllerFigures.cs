using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Controllers;

/// <summary>What controllers ask for about one axis: its gearing, rates, ramp and backlash, in angles and in pulses.</summary>
/// <remarks>
/// <para>A pulse is one microstep. Symbols: S full steps a motor turn, M microsteps a full step, i ratio of the stages, z teeth of the worm wheel, q starts of the worm,
/// <c>n = i z/q</c> total reduction; v slew rate and v0 start rate (rad/s), a greatest acceleration (rad/s2), T ramp time (s), all at the axis; b backlash at the axis (rad).</para>
/// <para>Pulses: a motor turn <c>S M</c>, a worm turn <c>S M i</c>, an axis turn <c>N = S M n</c>, a radian <c>N/(2 pi)</c>. Any rate or acceleration at the axis (rad/s, rad/s2)
/// times that is in pulses/s or pulses/s2; over M, in full steps.</para>
/// <para>All is plain counting and holds for any gearing; nothing here is simulated. Wear and catalogue figures may make the real ratio another one.</para>
/// </remarks>
/// <param name="model">The axis.</param>
public sealed class ControllerFigures(AxisModel model)
{
    /// <summary>Pulses of one motor turn: <c>S M</c>.</summary>
    public int PulsesPerMotorTurn => model.Motor.StepsPerRevolution * model.Drive.MicrostepsPerFullStep;

    /// <summary>Pulses of one worm turn: <c>S M i</c>.</summary>
    public double PulsesPerWormTurn => PulsesPerMotorTurn * model.Train.StageRatio;

    /// <summary>Pulses of one axis turn: <c>S M n</c>.</summary>
    public double PulsesPerAxisTurn => PulsesPerMotorTurn * model.Train.TotalRatio;

    /// <summary>Pulses of one radian at the axis: <c>S M n/(2 pi)</c>, 1/rad.</summary>
    public double PulsesPerRadian => PulsesPerAxisTurn / (2.0 * Math.PI);

    /// <summary>The total reduction in whole numbers; null when it is known in decimals only.</summary>
    public Fraction? ExactReduction => Gearing.ExactReduction.Of(model.Train);

    /// <summary>Pulses of one axis turn in whole numbers; null when the reduction is known in decimals only.</summary>
    public Fraction? ExactPulsesPerAxisTurn => ExactReduction?.Times(new Fraction(PulsesPerMotorTurn, 1));

    /// <summary>Full steps per second at a rate of the axis (rad/s), or per second squared at an acceleration (rad/s2): <c>r S n/(2 pi)</c>.</summary>
    public double FullSteps(double radians) => Pulses(radians) / model.Drive.MicrostepsPerFullStep;

    /// <summary>Pulses of an angle at the axis (rad), pulses per second at a rate (rad/s), or per second squared at an acceleration (rad/s2): <c>r S M n/(2 pi)</c>.</summary>
    public double Pulses(double radians) => radians * PulsesPerRadian;

    /// <summary>Time from one pulse to the next at a rate of the axis (rad/s), s: the reciprocal of the pulse rate; infinite at rest.</summary>
    public double PulseSeconds(double radiansPerSecond) => 1.0 / Pulses(Math.Abs(radiansPerSecond));

    /// <summary>Angle that the axis turns in one ramp, rad: <c>(v0 + v) T/2</c>.</summary>
    /// <remarks>A trapezoid and an S-curve alike: the rate of both rises point-symmetrically about the middle of the ramp.</remarks>
    public double RampRadians => 0.5 * (Math.Min(model.Motion.StartRateRadiansPerSecond, model.Motion.SlewRateRadiansPerSecond) + model.Motion.SlewRateRadiansPerSecond) * model.Motion.RampInUseSeconds;

    /// <summary>Rate at the axis above which the drive full-steps, rad/s: the changeover at the motor over n; infinite when it always microsteps.</summary>
    public double ChangeoverRadiansPerSecond => model.Drive.ChangeoverRadiansPerSecond / model.Train.TotalRatio;

    /// <summary>Backlash at the axis, rad: that of the worm mesh and of each stage at its output, the latter over the ratio from there to the axis.</summary>
    public double BacklashRadians
    {
        get
        {
            double after = model.Train.TotalRatio;
            double sum = model.Train.BacklashRadians;
            foreach (GearStage stage in model.Train.Stages)
            {
                after /= stage.Ratio;
                sum += stage.BacklashRadians / after;
            }

            return sum;
        }
    }

    /// <summary>Pulses that the motor makes before a reversed axis follows: <c>b S M n/(2 pi)</c>.</summary>
    public double BacklashPulses => Pulses(BacklashRadians);

    /// <summary>Pulses of one count of the encoder on the axis: <c>N</c> over its counts a turn; 0 without an encoder.</summary>
    public double PulsesPerEncoderCount => model.EncoderCounts > 0.0 ? PulsesPerAxisTurn / model.EncoderCounts : 0.0;

    /// <summary>Pulses per second at the sidereal rate.</summary>
    public double SiderealPulsesPerSecond => Pulses(SkyRates.MeanSiderealRadiansPerSecond);
}
