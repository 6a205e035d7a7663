using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>What sets a current at rest or while tracking.</summary>
public enum CurrentReason
{
    /// <summary>The torque that it must give, with the margin.</summary>
    Torque,

    /// <summary>The angle by which the detent torque pulls the rotor off its step: the settling tolerance at the axis.</summary>
    Resolution,

    /// <summary>A least current.</summary>
    Least,

    /// <summary>The lowest current tried with which the simulated axis settles well after the slew.</summary>
    Settling,

    /// <summary>More is wanted, but the slew current or the rated current ends it.</summary>
    Capped,
}

/// <summary>Currents while tracking and at rest, from statics.</summary>
/// <param name="TrackingAmperes">While tracking, A peak.</param>
/// <param name="TrackingReason">What sets it.</param>
/// <param name="TrackingTorqueNewtonMetres">Torque at the motor that tracking needs in the hardest corner, N m.</param>
/// <param name="HoldingAmperes">At rest, A peak.</param>
/// <param name="HoldingReason">What sets it.</param>
/// <param name="HoldingTorqueNewtonMetres">Torque at the motor that the imbalance asks for at rest in the hardest corner, N m; 0 when the worm holds it.</param>
/// <param name="WormHolds">Whether the worm holds the axis without current at every corner.</param>
/// <remarks>
/// <para>Tracking: <c>T = (G + F)/n</c> through the driving losses plus the motor's own friction, with G the greatest gravity torque of the check moves, F the axis' friction, both at the
/// upper ends of their ranges and times the margin. Holding: <c>T = G/n max(0, eta_b)</c> with the worm's friction at its lower end, less nothing for bearings.
/// Current <c>I = T/Km</c> with the motor's torque at its lower end (<see cref="StaticTorque"/>: microstepping).</para>
/// <para>Resolution: the rotor lags by <c>asin(T/(Km I))/Nr</c>; what changes in T as the rotor goes from step to step (the detent torque) must not turn the axis by
/// more than the settling tolerance, so <c>I = Td/(Km sin(Nr n tolerance))</c> while that angle is below 90 degrees. A steady load makes a steady lag, which pointing does not see.</para>
/// </remarks>
public sealed record HoldingCurrents(
    double TrackingAmperes, CurrentReason TrackingReason, double TrackingTorqueNewtonMetres, double HoldingAmperes, CurrentReason HoldingReason, double HoldingTorqueNewtonMetres, bool WormHolds)
{
    /// <summary>Least current, share of the rated one: so that the rotor stays on its step when touched (common practice, no source).</summary>
    public const double LeastShare = 0.25;

    /// <summary>The currents for a slew current.</summary>
    public static HoldingCurrents Of(MountSetup setup, MountAxis axis, IReadOnlyList<CheckMove> moves, Tolerances tolerances, double loadFactor, double slewAmperes)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(moves);
        ArgumentNullException.ThrowIfNull(tolerances);
        AxisModel model = setup.Axis(axis);
        StepperMotor motor = model.Motor;
        double cold = setup.Disturbances.ColdGreaseFactor;
        double gravity = Greatest(setup, axis, moves) * (1.0 + tolerances.ImbalanceShare);
        double friction = Math.Max(model.Bearings.BreakawayNewtonMetres, model.Bearings.CoulombNewtonMetres) * cold * (1.0 + tolerances.FrictionShare) * (1.0 + tolerances.ColdShare);
        double driving = model.Train.StageEfficiency * model.Train.Worm.DrivingEfficiencyWith(cold * (1.0 + tolerances.ColdShare));
        double back = model.Train.Worm.BackDrivingEfficiencyWith(cold * (1.0 - tolerances.ColdShare));
        double ratio = model.Train.TotalRatio;
        double constant = motor.TorqueConstantNewtonMetresPerAmpere * (1.0 - tolerances.MotorTorqueShare);
        double ends = Math.Min(slewAmperes, motor.RatedCurrentAmperes);
        double carry = (gravity + friction) / (ratio * driving);
        double track = (loadFactor * carry) + motor.CoulombTorqueNewtonMetres;
        double hold = back > 0.0 ? gravity * back * model.Train.StageEfficiency / ratio : 0.0;
        double lag = motor.RotorTeeth * ratio * setup.Move.SettleToleranceRadians;
        double fine = lag < 0.5 * Math.PI ? Math.Sin(lag) : 1.0;
        double least = LeastShare * motor.RatedCurrentAmperes;
        (double trackAmperes, CurrentReason trackReason) = Choose(track / constant, motor.DetentTorqueNewtonMetres / (constant * fine), least, ends);
        (double holdAmperes, CurrentReason holdReason) = Choose(loadFactor * hold / constant, motor.DetentTorqueNewtonMetres / (constant * fine), least, ends);
        return new HoldingCurrents(trackAmperes, trackReason, track, holdAmperes, holdReason, loadFactor * hold, back <= 0.0);
    }

    /// <summary>The same with another current after the slew.</summary>
    internal HoldingCurrents With(bool tracks, double amperes) =>
        tracks ? this with { TrackingAmperes = amperes, TrackingReason = CurrentReason.Settling } : this with { HoldingAmperes = amperes, HoldingReason = CurrentReason.Settling };

    /// <summary>Greatest gravity torque at the ends and along the moves, N m.</summary>
    public static double Greatest(MountSetup setup, MountAxis axis, IReadOnlyList<CheckMove> moves)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(moves);
        return moves.Count == 0 ? 0.0 : moves.Max(move => Enumerable.Range(0, 37).Max(k =>
        {
            double share = k / 36.0;
            var pose = new MountPose(
                move.Start.PolarRadians + (share * (move.End.PolarRadians - move.Start.PolarRadians)),
                move.Start.DeclinationRadians + (share * (move.End.DeclinationRadians - move.Start.DeclinationRadians)));
            return Math.Abs(setup.Load.GravityTorque(axis, pose));
        }));
    }

    private static (double Amperes, CurrentReason Reason) Choose(double torque, double resolution, double least, double most)
    {
        double wanted = Math.Max(least, Math.Max(torque, resolution));
        CurrentReason reason = wanted == least ? CurrentReason.Least : wanted == torque ? CurrentReason.Torque : CurrentReason.Resolution;
        return wanted > most ? (most, CurrentReason.Capped) : (Math.Min(most, RoundDigits.Up(wanted, AxisSettings.Digits)), reason);
    }
}
