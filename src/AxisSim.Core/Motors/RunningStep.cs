using AxisSim.Core.Drives;
using MathNet.Numerics.LinearAlgebra;

namespace AxisSim.Core.Motors;

/// <summary>What one full step of steady running makes of small deviations: currents, lead of the rotor and speed at its start to those at its end.</summary>
/// <remarks>
/// <para>In steady running each full step repeats the one before, turned on by a quarter of an electrical turn. Its state is a fixed point of the map over one step;
/// the eigenvalues of that map's Jacobian are by how much small deviations grow in a step (Floquet multipliers). The regulator's clamp is in it as it is, switched
/// phase by phase: an average over the turn would miss how the rotor's swing moves the instants of switching, which damps strongly while the clamp is in use for part of a step.</para>
/// <para>Equations and symbols as in <see cref="SmallSwings"/> and <see cref="TwoPhaseLaw"/>, in the phases; fourth-order steps of at most a third of the
/// regulator's time constant.</para>
/// </remarks>
internal sealed class RunningStep
{
    private const double QuarterTurn = 0.5 * Math.PI;
    private const int LeastParts = 48;
    private const double Swings = 4.0;
    private const int Easing = 10;
    private const int MostIterations = 24;
    private const int RoundsOfJacobian = 4;
    private const int MostRidden = 200;
    private const double Nudge = 1e-3;
    private readonly StepperMotor _motor;
    private readonly double _constant;
    private readonly double _volts;
    private readonly double _rate;
    private readonly double _current;
    private readonly bool _full;
    private readonly double _perRegulator;
    private readonly double _perInductance;
    private readonly double _perInertia;
    private readonly double _speed;
    private readonly double _load;
    private readonly double _damping;
    private readonly double _strong;
    private readonly double _stepHertz;
    private readonly int _parts;
    private readonly double _part;
    private double _drag;
    private double _share;

    public RunningStep(StepperMotor motor, ChopperDrive drive, bool fullStepping, double inertia, double damping, double speed, double loadTorque)
    {
        (_motor, _full, _speed) = (motor, fullStepping, speed);
        _constant = motor.TorqueConstantNewtonMetresPerAmpere;
        _volts = drive.SupplyVolts;
        _current = drive.SlewCurrentAmperes * (fullStepping ? drive.FullStepCurrentFraction : 1.0);
        (_perRegulator, _perInductance, _perInertia) = (1.0 / drive.RegulatorSeconds, 1.0 / motor.InductanceHenries, 1.0 / inertia);
        _load = loadTorque + motor.CoulombTorqueNewtonMetres + (motor.ViscousNewtonMetreSecondsPerRadian * speed);
        (_damping, _rate) = (damping + motor.ViscousNewtonMetreSecondsPerRadian, motor.RotorTeeth * speed);
        double fundamental = fullStepping ? PullOutLaw.SquareWaveFundamental * _current : _current;
        double peak = _constant * fundamental, held = Math.Clamp(_load / peak, -0.99, 0.99);
        SwingHertz = StaticTorque.ResonanceHertz(motor, peak, inertia) * Math.Pow(1.0 - (held * held), 0.25);
        _strong = StaticTorque.CriticalDamping(motor, peak, inertia);
        double seconds = QuarterTurn / _rate;
        _stepHertz = 1.0 / seconds;
        _parts = (int)Math.Max(LeastParts, Math.Ceiling(3.0 * seconds * _perRegulator));
        _part = seconds / _parts;
    }

    /// <summary>About how fast the rotor swings while its currents are regulated, Hz: tells swings apart that look alike from step to step.</summary>
    public double SwingHertz { get; }

    /// <summary>The swing; null when there is no steady running.</summary>
    public SmallSwing? Swing()
    {
        if (FixedPoint() is not { } state)
        {
            return null;
        }

        SmallSwing swing = About(state);
        if (swing.GrowthPerSecond <= 0.0)
        {
            return swing;
        }

        // A resonance may bend over: then one running that is left lies between two that are kept, and going on from it leads to one of these.
        state[2] += Nudge;
        return Solved(Ridden(state)) is { } other && About(other) is var kept && kept.GrowthPerSecond < swing.GrowthPerSecond ? kept : swing;
    }

    private SmallSwing About(Vector<double> state)
    {
        System.Numerics.Complex worst = Jacobian(state).Evd().EigenValues.MaxBy(value => value.Magnitude);
        double turn = Math.Abs(worst.Phase) / (2.0 * Math.PI) * _stepHertz;

        // From step to step a swing shows only within half the rate of steps: it is taken as the frequency nearest to that of the rotor on its field.
        double below = Math.Floor(SwingHertz / _stepHertz) * _stepHertz;
        double frequency = new[] { below + turn, below + _stepHertz - turn, below - turn, below + _stepHertz + turn }.Where(hertz => hertz >= 0.0).MinBy(hertz => Math.Abs(hertz - SwingHertz));
        return new SmallSwing(Math.Log(worst.Magnitude) * _stepHertz, _stepHertz > 2.0 * SwingHertz ? turn : frequency);
    }

    private Vector<double>? FixedPoint()
    {
        // Some swings with critical damping, the load coming on in the first half of them; then the damping goes back to what it is, or to a little.
        int settling = (int)Math.Clamp(Swings * _stepHertz / SwingHertz, 6.0, 1000.0);
        Vector<double> state = Vector<double>.Build.Dense([_current, _full ? -_current : 0.0, 0.0, 0.0]);
        double little = Math.Max(_damping, 0.03 * _strong);
        for (int i = 0; i < settling + Easing; i++)
        {
            _share = Math.Min(1.0, 2.0 * (i + 1.0) / settling);
            _drag = i < settling ? _strong : _strong * Math.Pow(little / _strong, (i + 1.0 - settling) / Easing);
            state = Over(state);
            if (!(Math.Abs(state[2]) < Math.PI))
            {
                return null;
            }
        }

        _share = 1.0;
        Vector<double>? found = null;
        foreach (double drag in Softening(little))
        {
            _drag = drag;
            found = Solved(state) ?? Solved(Ridden(state));
            if (found is null)
            {
                return null;
            }

            state = found;
        }

        return found;
    }

    /// <summary>From the damping with which running has settled to its own: in a resonance the swing is another with each.</summary>
    private IEnumerable<double> Softening(double from)
    {
        const double Share = 0.5;
        double least = Math.Max(_damping, 1e-3 * _strong);
        for (double drag = Share * from; drag > least; drag *= Share)
        {
            yield return drag;
        }

        yield return _damping;
    }

    /// <summary>The state after some more steps, which leads to steady running wherever swings decay.</summary>
    private Vector<double> Ridden(Vector<double> state)
    {
        for (int i = 0; i < MostRidden && Math.Abs(state[2]) < Math.PI; i++)
        {
            state = Over(state);
        }

        return state;
    }

    private Vector<double>? Solved(Vector<double> state)
    {
        Matrix<double>? miss = null;
        for (int i = 0; i < MostIterations; i++)
        {
            // The orbit is near, so a Jacobian serves for a few rounds.
            miss = i % RoundsOfJacobian == 0 || miss is null ? Matrix<double>.Build.DenseIdentity(4) - Jacobian(state) : miss;
            Vector<double> change = miss.Solve(Over(state) - state);
            state += change;
            if (!(Math.Abs(state[2]) < Math.PI))
            {
                return null;
            }

            if (Math.Abs(change[2]) < 1e-9 && Math.Abs(change[3]) < 1e-9 * _speed)
            {
                return state;
            }
        }

        return null;
    }

    private Matrix<double> Jacobian(Vector<double> state)
    {
        double[] sizes = [1e-5 * _current, 1e-5 * _current, 1e-5, 1e-5 * SwingHertz / _motor.RotorTeeth];
        return Matrix<double>.Build.DenseOfColumnVectors(Enumerable.Range(0, 4).Select(k =>
        {
            Vector<double> up = state.Clone(), down = state.Clone();
            (up[k], down[k]) = (up[k] + sizes[k], down[k] - sizes[k]);
            return (Over(up) - Over(down)) / (2.0 * sizes[k]);
        }));
    }

    /// <summary>One full step: currents (A), rotor ahead of its command (electrical rad), speed above the commanded one (rad/s).</summary>
    private Vector<double> Over(Vector<double> start)
    {
        var now = new Deviation(start[0], start[1], start[2], start[3]);
        for (int i = 0; i < _parts; i++)
        {
            double time = i * _part, half = 0.5 * _part;
            Deviation a = Slope(time, now);
            Deviation b = Slope(time + half, now.Plus(half, a));
            Deviation c = Slope(time + half, now.Plus(half, b));
            Deviation d = Slope(time + _part, now.Plus(_part, c));
            now = now.Plus(_part / 6.0, a).Plus(_part / 3.0, b).Plus(_part / 3.0, c).Plus(_part / 6.0, d);
        }

        // The next step is this one turned on by a quarter turn: phase B takes the place of A.
        return Vector<double>.Build.Dense([now.B, -now.A, now.Lead, now.Speed]);
    }

    private Deviation Slope(double time, in Deviation at)
    {
        double command = _rate * time, speed = _speed + at.Speed;
        (double sin, double cos) = Math.SinCos(command + at.Lead);
        (double commandSin, double commandCos) = _full ? (1.0, 1.0) : Math.SinCos(command);
        double twice = 2.0 * sin * cos, detent = 2.0 * twice * ((cos * cos) - (sin * sin));
        double torque = (_constant * ((at.B * cos) - (at.A * sin))) - (_motor.DetentTorqueNewtonMetres * detent);
        return new Deviation(
            CurrentSlope(_current * commandCos, at.A, -_constant * speed * sin),
            CurrentSlope(_current * commandSin, at.B, _constant * speed * cos),
            _motor.RotorTeeth * at.Speed,
            (torque - (_share * _load) - (_drag * at.Speed)) * _perInertia);
    }

    private double CurrentSlope(double wanted, double current, double emf)
    {
        double drop = (_motor.ResistanceOhms * current) + emf;
        return Math.Clamp((wanted - current) * _perRegulator, (-_volts - drop) * _perInductance, (_volts - drop) * _perInductance);
    }

    private readonly record struct Deviation(double A, double B, double Lead, double Speed)
    {
        public Deviation Plus(double time, in Deviation slope) =>
            new(A + (time * slope.A), B + (time * slope.B), Lead + (time * slope.Lead), Speed + (time * slope.Speed));
    }
}
