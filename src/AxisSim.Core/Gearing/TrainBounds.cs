using AxisSim.Core.Bounds;

namespace AxisSim.Core.Gearing;

/// <summary>What the figures of a <see cref="GearTrain"/>, its stages and its worm may be.</summary>
public static class TrainBounds
{
    private const double Degree = Math.PI / 180.0;
    private const double Arcsecond = Math.PI / 648000.0;

    /// <summary>Least driving efficiency of a worm by its geometry, cold grease included. Below this it is as good as stuck; a slip of the lead angle or the friction is likelier than such a worm.</summary>
    public const double LeastDrivingEfficiency = 0.05;

    /// <summary>Ratio of a stage.</summary>
    public static Bound StageRatio { get; } = Bound.Above(0, 1000);

    /// <summary>Efficiency of a stage, and plain driving efficiency of a worm.</summary>
    public static Bound Efficiency { get; } = Bound.From(0.01, 1);

    /// <summary>Reduction of all stages and the worm together: each may be well within its bounds and all of them beyond any train, and beyond the numbers of a computer.</summary>
    public static Bound TotalReduction { get; } = Bound.From(0.1, 1e5);

    /// <summary>What all stages together pass on.</summary>
    public static Bound StagesEfficiency { get; } = Bound.From(0.01, 1);

    /// <summary>Inertia of a wheel or a worm about its own shaft.</summary>
    public static Bound WheelInertia { get; } = Bound.From(0, 1, "kg m2");

    /// <summary>Backlash of a stage at its output shaft: up to 60 degrees.</summary>
    public static Bound StageBacklash { get; } = Bound.From(0, 60 * Degree, "rad");

    /// <summary>Stiffness of a stage at its output shaft.</summary>
    public static Bound StageStiffness { get; } = Bound.Above(0, 1e9, "N m/rad").OrInfinite();

    /// <summary>Starts of the worm.</summary>
    public static Bound Starts { get; } = Bound.Whole(1, 12);

    /// <summary>Teeth of the worm wheel.</summary>
    public static Bound WheelTeeth { get; } = Bound.Whole(8, 5000);

    /// <summary>Lead angle: 0.1 to 45 degrees.</summary>
    public static Bound LeadAngle { get; } = Bound.From(0.1 * Degree, 45 * Degree, "rad");

    /// <summary>Friction coefficient of the flanks.</summary>
    public static Bound Friction { get; } = Bound.From(0, 0.5);

    /// <summary>Normal pressure angle: 1 to 45 degrees.</summary>
    public static Bound PressureAngle { get; } = Bound.From(1 * Degree, 45 * Degree, "rad");

    /// <summary>Plain back-driving efficiency; zero or less locks.</summary>
    public static Bound BackEfficiency { get; } = Bound.From(-10, 1);

    /// <summary>Amplitude of the periodic error of the worm: up to one degree.</summary>
    public static Bound PeriodicAmplitude { get; } = Bound.From(0, 3600 * Arcsecond, "rad");

    /// <summary>Amplitude of the runout of the wheel: up to ten degrees.</summary>
    public static Bound RunoutAmplitude { get; } = Bound.From(0, 36000 * Arcsecond, "rad");

    /// <summary>Phase of a periodic error: up to a turn either way.</summary>
    public static Bound Phase { get; } = Bound.From(-360 * Degree, 360 * Degree, "rad");

    /// <summary>Backlash of the worm mesh seen at the axis: up to ten degrees.</summary>
    public static Bound Backlash { get; } = Bound.From(0, 36000 * Arcsecond, "rad");

    /// <summary>Stiffness seen at the axis with the rotor held.</summary>
    public static Bound Stiffness { get; } = Bound.From(1, 1e9, "N m/rad");

    /// <summary>Damping ratio of the axis on that stiffness.</summary>
    public static Bound DampingRatio { get; } = Bound.From(0, 2);

    /// <summary>Slip torque of the clutch at the axis.</summary>
    public static Bound Clutch { get; } = Bound.Above(0, 1e4, "N m").OrInfinite();
}
