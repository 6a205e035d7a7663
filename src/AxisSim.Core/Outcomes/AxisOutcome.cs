using AxisSim.Core.Motors;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>The part of a move in which something happens.</summary>
public enum MovePhase
{
    /// <summary>Speeding up.</summary>
    Accelerating,

    /// <summary>At the slew rate.</summary>
    Slewing,

    /// <summary>Slowing down.</summary>
    Decelerating,

    /// <summary>After the slew.</summary>
    Following,
}

/// <summary>Where and when sync was lost.</summary>
/// <param name="TimeSeconds">Time from the start of the move, s.</param>
/// <param name="AxisRateRadiansPerSecond">Planned axis rate then, rad/s.</param>
/// <param name="MotorSpeedRadiansPerSecond">Planned motor speed then, rad/s.</param>
/// <param name="Phase">Part of the move.</param>
/// <param name="FullStepping">Whether the drive was full-stepping.</param>
public sealed record LossOfSync(double TimeSeconds, double AxisRateRadiansPerSecond, double MotorSpeedRadiansPerSecond, MovePhase Phase, bool FullStepping);

/// <summary>Least torque margin over the move: 1 - needed/available.</summary>
/// <param name="Value">Margin, 1 at most; negative when the need exceeds the pull-out torque.</param>
/// <param name="TimeSeconds">When, s.</param>
/// <param name="NeededNewtonMetres">Shaft torque needed then, N m.</param>
/// <param name="AvailableNewtonMetres">Pull-out torque then, N m.</param>
/// <param name="MotorSpeedRadiansPerSecond">Planned motor speed then, rad/s.</param>
public sealed record TorqueMargin(double Value, double TimeSeconds, double NeededNewtonMetres, double AvailableNewtonMetres, double MotorSpeedRadiansPerSecond)
{
    /// <summary>The band of speeds, if any, in which the need comes near the least pull-out torque, so that the margin does not decide: there the move may lose step or not.</summary>
    public PullOutBand? Band { get; init; }

    /// <summary>Whether the axis is shaken at the slew rate, by its periodic error near a resonance, so that the margin does not decide.</summary>
    public bool ShakesAtRate { get; init; }

    /// <summary>Share of the torque by which a margin may be off: within it only the simulation of the move decides.</summary>
    public const double Undecided = 0.1;

    /// <summary>Whether the margin tells what the move does: above <see cref="Undecided"/> it keeps step, below minus that it does not.</summary>
    public bool Decides => Band is null && !ShakesAtRate && Math.Abs(Value) > Undecided;
}

/// <summary>Greatest common factor on inertia, imbalance and friction at which the simulated move still arrives.</summary>
/// <param name="Value">The factor.</param>
/// <param name="AtLeast">True when the search stopped at its upper end, so the factor is at least the value.</param>
/// <param name="Sharp">False when some lower factor fails or some higher one arrives: a resonance, not an overload, so the figure is no boundary.</param>
public sealed record LoadFactor(double Value, bool AtLeast, bool Sharp = true)
{
    /// <summary>A factor of this or more is usual: friction from datasheets is good to about 30 % (common practice, no source).</summary>
    public const double Usual = 1.3;

    /// <summary>Whether it is below the usual.</summary>
    public bool IsThin => !AtLeast && Value < Usual;
}

/// <summary>Final offset of the payload from its command, rad, split by cause; positive is towards greater angles. The parts add up to the total.</summary>
/// <param name="TotalRadians">Payload less command at the end of the run.</param>
/// <param name="BacklashRadians">Part due to the position in the backlash.</param>
/// <param name="WindUpRadians">Part due to the elastic wind-up of the train under gravity and wind, with the rotor's load angle.</param>
/// <param name="FrictionRadians">Part held by friction: the twist that would relax if friction vanished.</param>
/// <param name="PeriodicRadians">Part due to periodic error.</param>
/// <param name="FlexureRadians">Bend of a flexible payload against its axis; 0 when rigid.</param>
/// <param name="SlippedRadians">Part due to lost steps and a slipping clutch.</param>
public sealed record OffsetSplit(
    double TotalRadians,
    double BacklashRadians,
    double WindUpRadians,
    double FrictionRadians,
    double PeriodicRadians,
    double FlexureRadians,
    double SlippedRadians);

/// <summary>Facts that follow from the settings without simulation.</summary>
public sealed record DerivedFacts
{
    /// <summary>Motor revolutions per axis revolution.</summary>
    public required double TotalReduction { get; init; }

    /// <summary>Axis angle of a full step, rad.</summary>
    public required double FullStepRadians { get; init; }

    /// <summary>Axis angle of a microstep, rad.</summary>
    public required double MicrostepRadians { get; init; }

    /// <summary>Motor speed at the slew rate, rad/s.</summary>
    public required double MotorSpeedRadiansPerSecond { get; init; }

    /// <summary>Full steps per second at the slew rate.</summary>
    public required double FullStepsPerSecond { get; init; }

    /// <summary>Pulses (microsteps) per second at the slew rate.</summary>
    public required double PulsesPerSecond { get; init; }

    /// <summary>Slew rate, rad/s.</summary>
    public required double SlewRateRadiansPerSecond { get; init; }

    /// <summary>Greatest acceleration at the axis, rad/s2.</summary>
    public required double AccelerationRadiansPerSecondSquared { get; init; }

    /// <summary>Inertia about the axis at the start pose, kg m2.</summary>
    public required double AxisInertiaKilogramSquareMetres { get; init; }

    /// <summary>That inertia reflected to the motor shaft, kg m2.</summary>
    public required double ReflectedInertiaKilogramSquareMetres { get; init; }

    /// <summary>Driving efficiency of the worm.</summary>
    public required double WormEfficiency { get; init; }

    /// <summary>Driving efficiency of the whole train.</summary>
    public required double TrainEfficiency { get; init; }

    /// <summary>Whether the worm locks itself.</summary>
    public required bool SelfLocking { get; init; }

    /// <summary>Worm period at the sidereal rate, s.</summary>
    public required double WormPeriodSeconds { get; init; }

    /// <summary>Frequency of the rotor on its magnetic spring at the slew current, Hz.</summary>
    public required double RotorResonanceHertz { get; init; }

    /// <summary>Damping of that swing, N m s/rad.</summary>
    public required double DampingNewtonMetreSecondsPerRadian { get; init; }

    /// <summary>The same as a share of critical.</summary>
    public required double DampingShare { get; init; }

    /// <summary>Axis angle of one encoder count, rad; 0 without an encoder.</summary>
    public required double EncoderCountRadians { get; init; }
}

/// <summary>Heat and supply over the run.</summary>
/// <param name="PeakSupplyAmperes">Greatest supply current averaged over 10 ms, A.</param>
/// <param name="MeanSupplyAmperes">Mean over the slew, A.</param>
/// <param name="EnergyJoules">Energy drawn from the supply over the run, J.</param>
/// <param name="LowestBusVolts">Lowest bus voltage, V.</param>
/// <param name="HighestBusVolts">Highest bus voltage, V.</param>
/// <param name="EndCelsius">Winding temperature at the end of the run.</param>
/// <param name="ContinuousCelsius">The hottest winding temperature after slewing, tracking or holding without end.</param>
/// <param name="Duty">Which of them that is.</param>
/// <param name="LimitCelsius">Limit of the insulation class.</param>
/// <param name="Insulation">Insulation class.</param>
public sealed record PowerAndHeat(
    double PeakSupplyAmperes,
    double MeanSupplyAmperes,
    double EnergyJoules,
    double LowestBusVolts,
    double HighestBusVolts,
    double EndCelsius,
    double ContinuousCelsius,
    ContinuousDuty Duty,
    double LimitCelsius,
    InsulationClass Insulation);

/// <summary>How the axis comes to rest after the slew.</summary>
/// <param name="AgainstRestSeconds">
/// Time from the end of the slew until it stays within the tolerance of its final rest, s; null when it does not, or not for long enough to be sure.
/// </param>
/// <param name="AgainstCommandSeconds">The same about the command (a moving one when tracking), the periodic error taken as it is on average at the end of the run; null when it does not.</param>
/// <param name="OvershootRadians">Greatest excursion beyond the final rest in the direction of the approach, rad.</param>
/// <param name="HoldJumpRadians">Jump of the axis when the current falls, rad: against a twin run whose current does not; null when it does not fall in the run.</param>
/// <param name="ToleranceRadians">Tolerance, rad.</param>
/// <param name="RestRadians">The final rest: mean error of the payload about its plan at the end of the run, rad; the total of the offset.</param>
/// <param name="RippleRadians">Greatest excursion about the final rest in the time over which it is averaged, rad.</param>
/// <param name="Grazes">Whether a peak grazes the band: a tolerance 0.05 arcsec wider or narrower moves the settle time by over 1 ms.</param>
/// <param name="HalfStep">Where the same move rests at half the step; null when that was not run. Where it differs, the place of rest hangs on the step, or on the last digit.</param>
public sealed record Settling(double? AgainstRestSeconds, double? AgainstCommandSeconds, double OvershootRadians, double? HoldJumpRadians, double ToleranceRadians, double RestRadians, double RippleRadians, bool Grazes, HalfStepRest? HalfStep = null);

/// <summary>What one axis does in one move.</summary>
public sealed record AxisOutcome
{
    /// <summary>The axis.</summary>
    public required MountAxis Axis { get; init; }

    /// <summary>How it ends.</summary>
    public required MoveEnd Verdict { get; init; }

    /// <summary>Where sync was lost; null when it was not.</summary>
    public LossOfSync? Loss { get; init; }

    /// <summary>Full steps lost by the end of the run, rotor less command; a multiple of four.</summary>
    public required int LostFullSteps { get; init; }

    /// <summary>Time at which the clutch began to slip, s; null when it held.</summary>
    public double? ClutchSlipSeconds { get; init; }

    /// <summary>Clutch slip by the end of the run, rad.</summary>
    public double ClutchSlipRadians { get; init; }

    /// <summary>Least torque margin.</summary>
    public required TorqueMargin Margin { get; init; }

    /// <summary>Load factor; null when the move does not arrive.</summary>
    public LoadFactor? LoadFactor { get; init; }

    /// <summary>The rotor's greatest swing as a share of what its field holds; null when it loses step, or the model breaks down.</summary>
    public RotorSwing? Swing { get; init; }

    /// <summary>Planned duration of the slew, s.</summary>
    public required double SlewSeconds { get; init; }

    /// <summary>Settling; null after a stall.</summary>
    public Settling? Settling { get; init; }

    /// <summary>Final offset by cause.</summary>
    public required OffsetSplit Offset { get; init; }

    /// <summary>Supply and heat.</summary>
    public required PowerAndHeat Power { get; init; }

    /// <summary>Facts derived from the settings.</summary>
    public required DerivedFacts Facts { get; init; }

    /// <summary>Step in use, s.</summary>
    public required double StepSeconds { get; init; }
}
