namespace AxisSim.Core.Recommendations;

/// <summary>What the user of a mount does not know exactly.</summary>
public enum ToleranceKind
{
    /// <summary>Imbalance about the axis.</summary>
    Imbalance,

    /// <summary>Friction of the axis' bearings and seals.</summary>
    Friction,

    /// <summary>The factor of cold grease, which acts on bearings and worm.</summary>
    Cold,

    /// <summary>Supply voltage.</summary>
    Supply,

    /// <summary>Torque of the motor at a current.</summary>
    MotorTorque,

    /// <summary>Inertia about the axis.</summary>
    Inertia,

    /// <summary>Damping of the rotor.</summary>
    Damping,
}

/// <summary>How a quantity lies within its range.</summary>
public enum ToleranceDistribution
{
    /// <summary>Every value of the range is as likely as any other.</summary>
    Uniform,

    /// <summary>Normal; the range reaches two standard deviations to either side, and some samples lie beyond it.</summary>
    Normal,
}

/// <summary>Ranges of what is not known exactly, each plus and minus a share of the scenario's value.</summary>
/// <remarks>The presets are common practice, no source.</remarks>
public sealed record Tolerances
{
    /// <summary>Imbalance.</summary>
    public double ImbalanceShare { get; init; } = 0.1;

    /// <summary>Friction of bearings and seals.</summary>
    public double FrictionShare { get; init; } = 0.3;

    /// <summary>Factor of cold grease.</summary>
    public double ColdShare { get; init; } = 0.1;

    /// <summary>Supply voltage.</summary>
    public double SupplyShare { get; init; } = 0.05;

    /// <summary>Torque of the motor.</summary>
    public double MotorTorqueShare { get; init; } = 0.1;

    /// <summary>Inertia.</summary>
    public double InertiaShare { get; init; } = 0.05;

    /// <summary>Damping of the rotor.</summary>
    public double DampingShare { get; init; } = 0.5;

    /// <summary>How values lie within the ranges.</summary>
    public ToleranceDistribution Distribution { get; init; }

    /// <summary>The share of one kind.</summary>
    public double Share(ToleranceKind kind) => kind switch
    {
        ToleranceKind.Imbalance => ImbalanceShare,
        ToleranceKind.Friction => FrictionShare,
        ToleranceKind.Cold => ColdShare,
        ToleranceKind.Supply => SupplyShare,
        ToleranceKind.MotorTorque => MotorTorqueShare,
        ToleranceKind.Inertia => InertiaShare,
        _ => DampingShare,
    };
}
