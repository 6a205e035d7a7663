using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>Torque of a stepper on its chopper drive against load angle at one steady speed, and so how far its field holds the rotor.</summary>
/// <remarks>
/// <para>The rotor is turned at the commanded speed, <c>d</c> (load angle, rotor less plan, electrical rad) ahead of its plan: <c>Nr th = p + d</c>. The phase currents follow the drive's law
/// (<see cref="PhaseCircuit"/>, back-EMF and torque of <see cref="TwoPhaseLaw"/>) until they repeat from full step to full step; the mean of the torque over one is <c>T(d)</c>, N m at the
/// rotor, its own friction and detent left out. Where the currents are regulated and do not lag, <c>T = -Tp sin d</c>, Tp the greatest; a lagging regulator shifts it, a supply that limits shifts and bends it.</para>
/// <para><b>Field</b>: the place <c>d0</c> at which <c>T = 0</c> and which pulls the rotor back. <b>Held</b>: at a load <c>t</c> (N m, positive against the motion) the rotor rests where <c>T = t</c> on the
/// side where T falls with d; where <c>T = t</c> and T rises is the place from which it is pulled back no more (the unstable equilibrium), one behind the field and one an electrical turn on, ahead of it.
/// The angle from d0 to each is what the field holds that way: <c>pi - asin(t/Tp)</c> behind and <c>pi + asin(t/Tp)</c> ahead for the sine. A load that is more than the greatest torque has no place of rest: then the angle to the greatest torque counts.</para>
/// <para>Valid for swings that are slow against the currents: at once where they are regulated; where the supply limits them they take L/R to follow, and the field yields less to a swing than this says.</para>
/// </remarks>
internal sealed class FieldHold
{
    private const double QuarterTurn = Math.PI / 2.0;
    private const double Turn = 2.0 * Math.PI;

    /// <summary>Load angles over a turn.</summary>
    private const int Angles = 48;

    // Parts of a full step. The mean current of a part lags by the regulator's time constant however long the part is.
    private const int LeastParts = 16;
    private const int MostParts = 48;
    private const int MostRounds = 30;

    private readonly double[] _torque;
    private readonly double[] _angle;

    /// <summary>The curve of one speed.</summary>
    /// <param name="motor">Motor.</param>
    /// <param name="drive">Drive.</param>
    /// <param name="amperes">Commanded peak current of a phase while microstepping, A.</param>
    /// <param name="fullStepping">Whether it full-steps.</param>
    /// <param name="speed">Speed, rad/s, not negative.</param>
    public FieldHold(StepperMotor motor, ChopperDrive drive, double amperes, bool fullStepping, double speed)
    {
        double[] torques = Torques(motor, drive, fullStepping ? amperes * drive.FullStepCurrentFraction : amperes, fullStepping, speed);
        int most = Array.IndexOf(torques, torques.Max());
        int least = Enumerable.Range(most, Angles).MinBy(i => torques[i % Angles]);
        double At(int i) => torques[i % Angles];
        double Angle(int i) => Turn * i / Angles;
        (GreatestTorque, double greatestAt) = Crest(At(most + Angles - 1), At(most), At(most + 1), Angle(most));
        (LeastTorque, double leastAt) = Crest(At(least - 1 + Angles), At(least), At(least + 1), Angle(least));

        // From the greatest torque on it falls to the least, and from there it rises to the greatest again, a turn further on.
        int zero = Enumerable.Range(most, least - most).FirstOrDefault(i => At(i) >= 0.0 && At(i + 1) < 0.0, -1);
        Holds = zero >= 0;
        double field = Holds ? Angle(zero) + (Turn / Angles * At(zero) / (At(zero) - At(zero + 1))) : double.NaN;
        int[] rising = [.. Enumerable.Range(least + 1, most + Angles - least - 1)];
        double[] risen = new double[rising.Length];
        double so = LeastTorque;
        for (int i = 0; i < rising.Length; i++)
        {
            risen[i] = so = Math.Clamp(At(rising[i]), so, GreatestTorque);
        }

        _torque = [LeastTorque, .. risen, GreatestTorque];
        _angle = [leastAt, .. rising.Select(Angle), greatestAt + Turn];
        double shift = Turn * Math.Round(field / Turn);
        FieldRadians = field - shift;
        for (int i = 0; i < _angle.Length; i++)
        {
            _angle[i] -= shift;
        }
    }

    /// <summary>Whether there is a load angle without torque at all: not beyond the speed at which the supply gives none.</summary>
    public bool Holds { get; }

    /// <summary>The load angle of the field, <c>d0</c>, electrical rad; not a number where <see cref="Holds"/> is false.</summary>
    public double FieldRadians { get; }

    /// <summary>The greatest torque in the direction of motion, N m: the pull-out torque with the motor's own friction.</summary>
    public double GreatestTorque { get; }

    /// <summary>The greatest torque against the motion, N m, negative.</summary>
    public double LeastTorque { get; }

    /// <summary>The load angle ahead of the field from which a rotor under a load (N m, positive against the motion) is pulled back no more, electrical rad; a turn less is the one behind it.</summary>
    public double Unstable(double load)
    {
        double torque = Math.Clamp(load, LeastTorque, GreatestTorque);
        int found = Array.BinarySearch(_torque, torque), after = Math.Clamp(found < 0 ? ~found : found, 1, _torque.Length - 1);
        double rise = _torque[after] - _torque[after - 1];
        return _angle[after - 1] + (rise > 0.0 ? (torque - _torque[after - 1]) / rise * (_angle[after] - _angle[after - 1]) : 0.0);
    }

    /// <summary>Crest of the parabola through three neighbours.</summary>
    private static (double Value, double Angle) Crest(double before, double at, double after, double angle)
    {
        double bend = before - (2.0 * at) + after;
        double off = bend == 0.0 ? 0.0 : Math.Clamp(0.5 * (before - after) / bend, -0.5, 0.5);
        return (at + (0.25 * (after - before) * off), angle + (off * Turn / Angles));
    }

    private static double[] Torques(StepperMotor motor, ChopperDrive drive, double amperes, bool full, double speed)
    {
        // At a standstill the currents are where they are commanded, as in a full step that takes ages.
        double seconds = speed > 0.0 ? Math.Min(QuarterTurn / (motor.RotorTeeth * speed), 1e3 * drive.RegulatorSeconds) : 1e3 * drive.RegulatorSeconds;
        int parts = (int)Math.Clamp(Math.Ceiling(0.5 * seconds / drive.RegulatorSeconds), LeastParts, MostParts);
        var step = new FullStep(motor, drive, amperes, full, seconds, speed, parts);
        double[] torques = new double[Angles];
        (double A, double B) start = full ? (amperes, -amperes) : (amperes, 0.0);
        for (int i = 0; i < Angles; i++)
        {
            (start, torques[i]) = step.Repeating(Turn * i / Angles, start);
        }

        return torques;
    }

    /// <summary>The phase currents over one full step of steady running, and the mean torque.</summary>
    private sealed class FullStep(StepperMotor motor, ChopperDrive drive, double amperes, bool full, double seconds, double speed, int parts)
    {
        private readonly PhaseDecay _decay = PhaseDecay.Over(seconds / parts, drive.RegulatorSeconds, motor.InductanceHenries / motor.ResistanceOhms);
        private readonly TwoPhaseLaw _law = new(motor.RotorTeeth, motor.TorqueConstantNewtonMetresPerAmpere, 0.0);

        /// <summary>The currents with which a step begins that is followed by one like it, and its mean torque; Newton's method on one step, which is nearly linear in the currents.</summary>
        public ((double A, double B) Start, double Torque) Repeating(double lead, (double A, double B) start)
        {
            double nudge = 1e-4 * amperes, slack = 1e-6 * amperes;
            for (int round = 0; ; round++)
            {
                (double a, double b, double torque) = Over(lead, start);
                (double missA, double missB) = (a - start.A, b - start.B);
                if (round == MostRounds || (Math.Abs(missA) < slack && Math.Abs(missB) < slack))
                {
                    return (start, torque);
                }

                (double aa, double ba, _) = Over(lead, (start.A + nudge, start.B));
                (double ab, double bb, _) = Over(lead, (start.A, start.B + nudge));
                (double m00, double m01, double m10, double m11) = (1.0 - ((aa - a) / nudge), -(ab - a) / nudge, -(ba - b) / nudge, 1.0 - ((bb - b) / nudge));
                double size = (m00 * m11) - (m01 * m10);
                start = (start.A + (((m11 * missA) - (m01 * missB)) / size), start.B + (((m00 * missB) - (m10 * missA)) / size));
            }
        }

        /// <summary>One full step: the currents with which the next begins, turned back by a quarter turn, and the mean torque.</summary>
        // Compiled for speed at the first call: all is over before the runtime would get to it by itself.
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        private (double A, double B, double Torque) Over(double lead, (double A, double B) start)
        {
            double part = seconds / parts, sweep = QuarterTurn / parts, conductance = 1.0 / motor.ResistanceOhms;
            double smooth = 1.0 - (sweep * sweep / 24.0);
            (double a, double b) = start;
            double sum = 0.0;
            for (int i = 0; i < parts; i++)
            {
                double plan = (i + 0.5) * sweep;
                TwoPhaseLaw.Instant at = _law.At((plan + lead) / motor.RotorTeeth, speed, part);
                (double sin, double cos) = full ? (1.0, 1.0) : Math.SinCos(plan);
                double scale = full ? amperes : amperes * smooth;
                PhaseCurrent nextA = PhaseCircuit.Regulated(_decay, a, scale * cos, _law.BackEmfA(at), conductance, drive.SupplyVolts);
                PhaseCurrent nextB = PhaseCircuit.Regulated(_decay, b, scale * sin, _law.BackEmfB(at), conductance, drive.SupplyVolts);
                sum += _law.CurrentTorque(at, nextA.Mean, nextB.Mean, nextA.End - a, nextB.End - b);
                (a, b) = (nextA.End, nextB.End);
            }

            // Phase B of the next step is where phase A of this one was, and the other way round with its sign changed.
            return (b, -a, sum / parts);
        }
    }
}
