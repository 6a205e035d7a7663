using System.Runtime.CompilerServices;

namespace AxisSim.Core.Drives;

/// <summary>Phase currents commanded over a step, in one part or in two.</summary>
/// <param name="FirstA">Phase A in the first part, A.</param>
/// <param name="FirstB">Phase B in the first part, A.</param>
/// <param name="Split">End of the first part as a fraction of the step; 1 when there is no second part.</param>
/// <param name="SecondA">Phase A in the second part, A.</param>
/// <param name="SecondB">Phase B in the second part, A.</param>
internal readonly record struct PhaseTargets(double FirstA, double FirstB, double Split, double SecondA, double SecondB);

/// <summary>A change of what the drive does at a set time: the mode, or the current.</summary>
internal readonly record struct DriveEvent(double TimeSeconds, double CurrentAmperes, bool FullStepping);

/// <summary>Turns the planned shaft angle into commanded phase currents, microstepping or full-stepping.</summary>
/// <remarks>
/// Microstepping: <c>I cos(Nr q), I sin(Nr q)</c> with q the plan rounded to the nearest microstep, averaged over the step.
/// Full-stepping: <c>F I sign(cos(Nr p)), F I sign(sin(Nr p))</c>, p the plan; an edge inside a step splits it exactly, for
/// the clamp of the voltage is not linear and a mean command would be wrong.
/// </remarks>
internal struct PhaseCommand
{
    private const double QuarterTurn = 0.5 * Math.PI;
    private const double QuarterTurnsPerRadian = 2.0 / Math.PI;
    private readonly MicrostepTable _table;
    private readonly double _teeth;
    private readonly double _fraction;
    private readonly DriveEvent[] _events;
    private int _next;
    private double _current;
    private double _nextTime;

    public PhaseCommand(MicrostepTable table, double teeth, double fullStepFraction, DriveEvent[] events)
    {
        _table = table;
        _teeth = teeth;
        _fraction = fullStepFraction;
        _events = events;
        _current = events[0].CurrentAmperes;
        FullStepping = events[0].FullStepping;
        _next = 1;
        _nextTime = events.Length > 1 ? events[1].TimeSeconds : double.PositiveInfinity;
    }

    public bool FullStepping { get; private set; }

    /// <summary>When the mode or the current changes next, s; infinite when neither does.</summary>
    public readonly double NextSeconds => _nextTime;

    public void IgnoreEvents() => _nextTime = double.PositiveInfinity;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public PhaseTargets Over(in Drives.StepContext step)
    {
        double firstA = 0.0;
        double firstB = 0.0;
        double secondA = 0.0;
        double secondB = 0.0;
        double split = Over(step.StartSeconds, step.StepSeconds, step.PlanStartRadians, step.PlanEndRadians, ref firstA, ref firstB, ref secondA, ref secondB);
        return new PhaseTargets(firstA, firstB, split, secondA, secondB);
    }

    /// <summary>The same, put where the caller wants it; the second part only if there is one.</summary>
    /// <returns>End of the first part as a fraction of the step; 1 when there is no second part.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Over(double startSeconds, double stepSeconds, double planStart, double planEnd, ref double firstA, ref double firstB, ref double secondA, ref double secondB)
    {
        double from = _teeth * planStart;
        double to = _teeth * planEnd;
        if (_nextTime < startSeconds + stepSeconds)
        {
            PhaseTargets targets = OverEvent(new Drives.StepContext(startSeconds, stepSeconds, planStart, planEnd), from, to);
            (firstA, firstB, secondA, secondB) = (targets.FirstA, targets.FirstB, targets.SecondA, targets.SecondB);
            return targets.Split;
        }

        if (!FullStepping)
        {
            (double c, double s) = _table.Mean(from, to);
            (firstA, firstB) = (_current * c, _current * s);
            return 1.0;
        }

        double level = _current * _fraction;
        double first = Math.Floor(from * QuarterTurnsPerRadian);
        double last = Math.Floor(to * QuarterTurnsPerRadian);
        (double a, double b) = Signs(first);
        (firstA, firstB) = (level * a, level * b);
        if (first == last)
        {
            return 1.0;
        }

        (double nextA, double nextB) = Signs(last);
        (secondA, secondB) = (level * nextA, level * nextB);
        return ((Math.Max(first, last) * QuarterTurn) - from) / (to - from);
    }

    /// <summary>A step in which the mode or the current changes: the command before and after it.</summary>
    private PhaseTargets OverEvent(in Drives.StepContext step, double from, double to)
    {
        double split = Math.Max(0.0, (_nextTime - step.StartSeconds) / step.StepSeconds);
        double mid = from + (split * (to - from));
        (double a, double b) = Part(from, mid);
        while (_nextTime < step.StartSeconds + step.StepSeconds)
        {
            _current = _events[_next].CurrentAmperes;
            FullStepping = _events[_next].FullStepping;
            _next++;
            _nextTime = _next < _events.Length ? _events[_next].TimeSeconds : double.PositiveInfinity;
        }

        (double c, double d) = Part(mid, to);
        return new PhaseTargets(a, b, split, c, d);
    }

    private readonly (double A, double B) Part(double from, double to)
    {
        if (FullStepping)
        {
            (double a, double b) = Signs(Math.Floor(0.5 * (from + to) * QuarterTurnsPerRadian));
            return (_current * _fraction * a, _current * _fraction * b);
        }

        (double c, double s) = _table.Mean(from, to);
        return (_current * c, _current * s);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (double A, double B) Signs(double quarter)
    {
        // Without a branch, for no predictor follows the quarters.
        long q = (long)quarter & 3;
        return (1.0 - (2.0 * (((q + 1) >> 1) & 1)), 1.0 - (2.0 * (q >> 1)));
    }
}
