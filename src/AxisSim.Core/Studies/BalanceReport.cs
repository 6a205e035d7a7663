using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Gravity torque about both axes at one pose.</summary>
/// <param name="Pose">Mechanical angles, rad.</param>
/// <param name="PolarNewtonMetres">About the polar axis, N m; positive turns it towards greater angles.</param>
/// <param name="DeclinationNewtonMetres">About the declination axis, N m; likewise.</param>
public readonly record struct PoseTorque(MountPose Pose, double PolarNewtonMetres, double DeclinationNewtonMetres);

/// <summary>The greatest gravity torque about one axis over all poses, and a pose that shows it.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Pose">Pose of the greatest positive torque, rad; half a turn of that axis on, it is as large and negative.</param>
/// <param name="NewtonMetres">Its size, N m.</param>
public readonly record struct WorstImbalance(MountAxis Axis, MountPose Pose, double NewtonMetres);

/// <summary>What to do with the counterweight.</summary>
public enum CounterweightAction
{
    /// <summary>It is where it should be (within a tenth of a millimetre).</summary>
    Keep,

    /// <summary>Move it to another distance.</summary>
    Move,

    /// <summary>It is too light for its bar: move it to the end and add mass.</summary>
    AddMass,

    /// <summary>The bar alone is too heavy for the payload, or there is nothing to balance: take the weights off.</summary>
    Remove,

    /// <summary>There is no counterweight: one of the given moment is needed.</summary>
    Provide,
}

/// <summary>Where to put the counterweight so that the polar axis is balanced as far as it can be.</summary>
/// <param name="Action">What to do.</param>
/// <param name="NeededMomentKilogramMetres">Mass times distance that the weights need, kg m (negative when even the bar is too heavy).</param>
/// <param name="DistanceMetres">Distance of the weights' centre from the polar axis, m; NaN when there is no counterweight to place.</param>
/// <param name="MassKilograms">Mass of the weights at that distance, kg; NaN likewise.</param>
/// <param name="ReachableRemainderNewtonMetres">
/// Amplitude of the polar imbalance due to the counterweight that remains if the present mass is moved as far as the bar allows, N m.
/// </param>
public sealed record CounterweightAdvice(
    CounterweightAction Action,
    double NeededMomentKilogramMetres,
    double DistanceMetres,
    double MassKilograms,
    double ReachableRemainderNewtonMetres);

/// <summary>How far to shift everything on the telescope side so that the declination axis is balanced.</summary>
/// <param name="ForwardMetres">Forward (towards the sky when positive), m.</param>
/// <param name="SideMetres">Sideways along Side of the tube frame, m.</param>
/// <param name="RemainderWithoutSideNewtonMetres">Greatest declination imbalance that remains if only the forward shift is made, N m.</param>
public sealed record PayloadShift(double ForwardMetres, double SideMetres, double RemainderWithoutSideNewtonMetres);

/// <summary>Imbalance of a payload over all poses, and how to remove it.</summary>
public sealed record BalanceReport
{
    /// <summary>Torques on a grid of poses, polar angle outermost, both from -180 degrees up.</summary>
    public required IReadOnlyList<PoseTorque> Grid { get; init; }

    /// <summary>Greatest imbalance about the polar axis.</summary>
    public required WorstImbalance Polar { get; init; }

    /// <summary>Greatest imbalance about the declination axis.</summary>
    public required WorstImbalance Declination { get; init; }

    /// <summary>Amplitude of the part of the polar imbalance that is the same at every declination (the counterweight's business), N m.</summary>
    public required double PolarFromCounterweightNewtonMetres { get; init; }

    /// <summary>Greatest amplitude of the part that changes with declination (an unbalanced tube), N m.</summary>
    public required double PolarFromTubeNewtonMetres { get; init; }

    /// <summary>Where to put the counterweight.</summary>
    public required CounterweightAdvice Counterweight { get; init; }

    /// <summary>Where to put the payload.</summary>
    public required PayloadShift Shift { get; init; }

    /// <summary>The payload with all of the advice taken.</summary>
    public required PayloadModel Balanced { get; init; }

    /// <summary>Greatest polar imbalance then, N m.</summary>
    public required double RemainingPolarNewtonMetres { get; init; }

    /// <summary>Greatest declination imbalance then, N m.</summary>
    public required double RemainingDeclinationNewtonMetres { get; init; }

    /// <summary>Polar inertia at declination angle 0 before and then, kg m2: balance has its price in inertia.</summary>
    public required (double Before, double After) PolarInertiaKilogramSquareMetres { get; init; }
}
