namespace AxisSim.Core.Gearing;

/// <summary>One stage (belt, spur, planetary) between motor and worm.</summary>
/// <remarks>Ratio greater than one slows the output. Backlash and stiffness are seen at the output shaft.</remarks>
public sealed record GearStage
{
    /// <summary>Name used in keys and reports.</summary>
    public required string Name { get; init; }

    /// <summary>Teeth of the driven wheel; with <see cref="DrivingTeeth"/> the exact ratio.</summary>
    public required double DrivenTeeth { get; init; }

    /// <summary>Teeth of the driving wheel (1 when the ratio was given as a plain number).</summary>
    public required double DrivingTeeth { get; init; }

    /// <summary>Mesh efficiency in either direction, 0 to 1.</summary>
    public double Efficiency { get; init; } = 1.0;

    /// <summary>Inertia of the driven wheel about its own shaft, kg m2.</summary>
    public double InertiaKilogramSquareMetres { get; init; }

    /// <summary>Total backlash at the output shaft, rad.</summary>
    public double BacklashRadians { get; init; }

    /// <summary>Torsional stiffness at the output shaft, N m/rad; infinite when rigid.</summary>
    public double StiffnessNewtonMetresPerRadian { get; init; } = double.PositiveInfinity;

    /// <summary>Speed ratio input over output.</summary>
    public double Ratio => DrivenTeeth / DrivingTeeth;
}

/// <summary>The worm and its wheel: geometry with friction, or plain efficiencies.</summary>
public sealed record WormStage
{
    /// <summary>Starts (threads) of the worm.</summary>
    public int Starts { get; init; } = 1;

    /// <summary>Teeth of the worm wheel.</summary>
    public required int WheelTeeth { get; init; }

    /// <summary>Lead angle at the worm's pitch cylinder, rad; used when no plain efficiency is given.</summary>
    public double LeadAngleRadians { get; init; }

    /// <summary>Friction coefficient of the worm's flanks; used when no plain efficiency is given.</summary>
    public double FrictionCoefficient { get; init; }

    /// <summary>Normal pressure angle, rad.</summary>
    public double PressureAngleRadians { get; init; } = 20.0 * Math.PI / 180.0;

    /// <summary>Inertia of the worm and its shaft, kg m2.</summary>
    public double InertiaKilogramSquareMetres { get; init; }

    /// <summary>Plain driving efficiency that replaces the geometry, 0 to 1; null to use the geometry.</summary>
    public double? GivenDrivingEfficiency { get; init; }

    /// <summary>Plain back-driving efficiency; zero or less locks; null takes <c>2 - 1/driving</c>.</summary>
    public double? GivenBackDrivingEfficiency { get; init; }

    /// <summary>Periodic error of the worm and runout of its wheel.</summary>
    public PeriodicError PeriodicError { get; init; } = PeriodicError.None;

    /// <summary>Speed ratio worm over wheel.</summary>
    public double Ratio => (double)WheelTeeth / Starts;
}

/// <summary>Periodic error as an angle at the axis: first and second harmonic of the worm, and runout of the wheel.</summary>
/// <remarks><c>e(p) = A1 sin(N p + f1) + A2 sin(2 N p + f2) + A3 sin(p + f3)</c>, p = worm turns as an axis angle (rad), N = wheel teeth / starts.</remarks>
public sealed record PeriodicError(
    double FirstAmplitudeRadians,
    double FirstPhaseRadians,
    double SecondAmplitudeRadians,
    double SecondPhaseRadians,
    double RunoutAmplitudeRadians,
    double RunoutPhaseRadians)
{
    /// <summary>No periodic error.</summary>
    public static PeriodicError None { get; } = new(0, 0, 0, 0, 0, 0);
}

/// <summary>The whole transmission from motor shaft to axis.</summary>
public sealed record GearTrain
{
    /// <summary>Stages before the worm, from the motor on; may be empty.</summary>
    public IReadOnlyList<GearStage> Stages { get; init; } = [];

    /// <summary>The worm.</summary>
    public required WormStage Worm { get; init; }

    /// <summary>Total backlash of the worm mesh seen at the axis, rad.</summary>
    public double BacklashRadians { get; init; }

    /// <summary>Torsional stiffness seen at the axis with the rotor held, N m/rad.</summary>
    public required double StiffnessNewtonMetresPerRadian { get; init; }

    /// <summary>Damping ratio of the axis on that stiffness.</summary>
    public double DampingRatio { get; init; } = 0.05;

    /// <summary>Slip torque of the clutch at the axis, N m; infinite when there is none.</summary>
    public double ClutchNewtonMetres { get; init; } = double.PositiveInfinity;

    /// <summary>Total reduction, motor revolutions per axis revolution.</summary>
    public double TotalRatio => StageRatio * Worm.Ratio;

    /// <summary>Reduction of the stages before the worm.</summary>
    public double StageRatio => Stages.Aggregate(1.0, (product, stage) => product * stage.Ratio);
}
