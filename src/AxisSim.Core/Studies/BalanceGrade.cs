using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>How much an imbalance matters.</summary>
public enum ImbalanceGrade
{
    /// <summary>Friction hides it from a hand at the open clutch.</summary>
    CannotBeFelt,

    /// <summary>A hand feels it; motor and clutch bear it with the usual room.</summary>
    Harmless,

    /// <summary>It takes torque that the usual room asks for.</summary>
    TakesTorque,

    /// <summary>It is more than the motor lifts at the slew rate, or than the clutch holds.</summary>
    TooMuch,
}

/// <summary>An imbalance about one axis held against friction, motor and clutch.</summary>
/// <remarks>
/// <para>All at the axis, N m. F breakaway friction of the bearings, cold grease included; J inertia (kg m2) in the pose, a greatest acceleration (rad/s2), v slew rate (rad/s), B viscous friction, Jr inertia on the
/// rotor's side, n total reduction, e driving efficiency of the train, P pull-out torque at the slew rate in its mode (<see cref="PullOutLaw.OnDrive"/>, N m at the shaft), C slip torque of the clutch.
/// Without the imbalance the hardest moment, full acceleration at the slew rate, asks for <c>N = (J a + F + B v)/(n e) + Jr n a</c> at the shaft and <c>K = J a + F + B v</c> at the clutch.</para>
/// <para>Hidden: F. Lift: <c>(P - N) n e</c>. Clutch: <c>C - K</c>. Harmless: the least of <c>(P/1.3 - N) n e</c> and <c>C/1.3 - K</c>, so that the usual load factor stays
/// (<see cref="LoadFactor.Usual"/>). An imbalance below 30 % of the friction is lost in what friction is known to and cannot be felt either way.</para>
/// <para>Closed forms of steady running: no resonance, no ripple. The simulated move decides.</para>
/// </remarks>
/// <param name="Axis">The axis.</param>
/// <param name="NewtonMetres">The imbalance, N m.</param>
/// <param name="Grade">How much it matters.</param>
/// <param name="HiddenNewtonMetres">Up to this it cannot be felt, N m.</param>
/// <param name="HarmlessNewtonMetres">Up to this it is harmless, N m; not above zero where motor or clutch lack the usual room without any imbalance.</param>
/// <param name="LiftNewtonMetres">The most that the motor lifts at the slew rate and full acceleration, N m.</param>
/// <param name="ClutchNewtonMetres">The most that the clutch holds then, N m; infinite without a clutch.</param>
/// <param name="TorqueShare">Share of the pull-out torque at the slew rate that lifting it takes, losses included.</param>
public sealed record GradedImbalance(
    MountAxis Axis, double NewtonMetres, ImbalanceGrade Grade, double HiddenNewtonMetres, double HarmlessNewtonMetres, double LiftNewtonMetres, double ClutchNewtonMetres, double TorqueShare)
{
    /// <summary>Friction is known to about this share (common practice, no source).</summary>
    private const double FrictionKnownTo = LoadFactor.Usual - 1.0;

    /// <summary>Grades an imbalance in a pose.</summary>
    /// <param name="setup">The mount; it must have the axis.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="imbalance">The imbalance and its pose.</param>
    public static GradedImbalance Of(MountSetup setup, MountAxis axis, PoseImbalance imbalance)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double cold = setup.Disturbances.ColdGreaseFactor, rate = model.Motion.SlewRateRadiansPerSecond, acceleration = model.Motion.PeakAcceleration;
        double hidden = model.Bearings.BreakawayNewtonMetres * cold;
        double rest = (setup.Load.Inertia(axis, imbalance.Pose.DeclinationRadians) * acceleration) + hidden + (model.Bearings.ViscousNewtonMetreSecondsPerRadian * cold * rate);
        double ratio = model.Train.TotalRatio, passes = ratio * model.Train.StageEfficiency * model.Train.Worm.DrivingEfficiencyWith(cold), speed = rate * ratio;
        double available = PullOutLaw.OnDrive(model.Motor, model.Drive, speed > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, speed);
        double need = (rest / passes) + (model.RotorSideInertiaKilogramSquareMetres * ratio * acceleration);
        double lift = (available - need) * passes, clutch = model.Train.ClutchNewtonMetres - rest;
        double harmless = Math.Min(((available / LoadFactor.Usual) - need) * passes, (model.Train.ClutchNewtonMetres / LoadFactor.Usual) - rest);
        double torque = imbalance.NewtonMetres;
        bool lost = torque <= FrictionKnownTo * hidden;
        ImbalanceGrade grade = torque <= hidden && (lost || torque <= harmless) ? ImbalanceGrade.CannotBeFelt
            : torque <= harmless ? ImbalanceGrade.Harmless
            : torque > Math.Min(lift, clutch) ? ImbalanceGrade.TooMuch
            : ImbalanceGrade.TakesTorque;
        return new GradedImbalance(axis, torque, grade, hidden, harmless, lift, clutch, available > 0.0 ? torque / passes / available : double.PositiveInfinity);
    }
}
