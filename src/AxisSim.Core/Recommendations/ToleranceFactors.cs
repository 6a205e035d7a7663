using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using MathNet.Numerics.Distributions;

namespace AxisSim.Core.Recommendations;

/// <summary>One way in which a mount may differ from its scenario: a factor on each quantity that has a tolerance.</summary>
/// <param name="Imbalance">On the gravity torques.</param>
/// <param name="Friction">On the friction of the axis' bearings.</param>
/// <param name="Cold">On the factor of cold grease.</param>
/// <param name="Supply">On the supply voltage.</param>
/// <param name="MotorTorque">On the holding torque of the motor.</param>
/// <param name="Inertia">On the inertia about the axis.</param>
/// <param name="Damping">On the damping of the rotor.</param>
public readonly record struct ToleranceFactors(double Imbalance, double Friction, double Cold, double Supply, double MotorTorque, double Inertia, double Damping)
{
    // A normal sample far out must not turn a friction or a voltage round.
    private const double Least = 0.05;

    /// <summary>How many quantities there are.</summary>
    public const int Kinds = 7;

    /// <summary>How many corners their ranges have.</summary>
    public const int Corners = 1 << Kinds;

    /// <summary>The scenario as it is.</summary>
    public static ToleranceFactors Nominal { get; } = new(1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0);

    /// <summary>The corner expected to be hardest: all that loads the motor high, all that drives it low.</summary>
    public static int HardMask => 0b0100111;

    /// <summary>A corner of the ranges; bit k of the mask puts the k-th kind at its upper end.</summary>
    public static ToleranceFactors Corner(Tolerances tolerances, int mask)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        return From(kind => 1.0 + (((mask >> (int)kind) & 1) == 1 ? 1.0 : -1.0) * tolerances.Share(kind));
    }

    /// <summary>The scenario with one quantity at an end of its range.</summary>
    public static ToleranceFactors OneAt(Tolerances tolerances, ToleranceKind which, bool upper)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        return From(kind => kind == which ? 1.0 + ((upper ? 1.0 : -1.0) * tolerances.Share(kind)) : 1.0);
    }

    /// <summary>The setup of an axis with these factors.</summary>
    public MountSetup Apply(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        MountSetup loaded = setup.WithBearings(axis, Friction) with
        {
            Load = setup.Load.Scaled(Inertia, Imbalance),
            Disturbances = setup.Disturbances with { ColdGreaseFactor = setup.Disturbances.ColdGreaseFactor * Cold },
        };
        (double torque, double damping) = (MotorTorque, Damping);
        return loaded.WithSupply(axis, setup.Axis(axis).Drive.SupplyVolts * Supply)
            .Edit(axis, model => model with { Motor = model.Motor with { HoldingTorqueNewtonMetres = model.Motor.HoldingTorqueNewtonMetres * torque } })
            .WithDrive(axis, drive => drive with
            {
                GivenDampingNewtonMetreSecondsPerRadian = drive.GivenDampingNewtonMetreSecondsPerRadian * damping,
                DampingShare = drive.DampingShare * damping,
            });
    }

    /// <summary>A random member of the ranges.</summary>
    internal static ToleranceFactors Sample(Tolerances tolerances, SplitMix64 random) => From(kind =>
    {
        double unit = random.NextUnit();
        double share = tolerances.Share(kind);
        double off = tolerances.Distribution == ToleranceDistribution.Uniform
            ? share * ((2.0 * unit) - 1.0)
            : 0.5 * share * Normal.InvCDF(0.0, 1.0, Math.Max(unit, double.Epsilon));
        return Math.Max(Least, 1.0 + off);
    });

    private static ToleranceFactors From(Func<ToleranceKind, double> of) => new(
        of(ToleranceKind.Imbalance), of(ToleranceKind.Friction), of(ToleranceKind.Cold), of(ToleranceKind.Supply), of(ToleranceKind.MotorTorque), of(ToleranceKind.Inertia), of(ToleranceKind.Damping));
}
