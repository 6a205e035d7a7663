using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Outcomes;

/// <summary>Makes the trace of a run: the least, the greatest and the mean of every quantity over stretches of equally many steps.</summary>
/// <remarks>
/// Least and greatest are those of the very numbers that a sink for every step gets. A step allocates nothing. The planned torques are smooth functions of time
/// and dear, so without a sink they are looked at only as often as their extremes ask for (<see cref="SmoothRange"/>), in pieces that are too short for a swing to hide.
/// </remarks>
internal sealed class TraceRecorder
{
    /// <summary>Stretches of a run, at most: two or three for each pixel of a figure's width.</summary>
    public const int MostStretches = 3000;

    /// <summary>Steps that are gathered together.</summary>
    private const int Rows = 16;

    /// <summary>Numbers of a vector.</summary>
    private const int Vector = 4;

    private readonly MoveRun _run;
    private readonly double _step;
    private readonly double _slewEnd;
    private readonly double _ratePerRadian;
    private readonly int _length;
    private readonly Func<double, (double Needed, double Available)> _planned;
    private readonly Func<double, (double From, double To)> _held;
    private readonly long _smooth;
    private readonly IStepSink? _sink;
    private readonly SettlingCloseUp _settling;
    private readonly LossCloseUp _loss;
    private readonly StepValues[] _rows = new StepValues[Rows];
    private StepValues _least;
    private StepValues _sum;
    private StepValues _greatest;
    private int _filled;
    private int _steps;
    private long _seen;
    private double _from;
    private double _to;

    /// <summary>A recorder of a run that has not begun.</summary>
    /// <param name="run">The run.</param>
    /// <param name="ratio">Total reduction.</param>
    /// <param name="planned">Needed and available torque of the planned motion at a time, N m.</param>
    /// <param name="held">Load angles between which the field holds the rotor at a time, electrical rad.</param>
    /// <param name="smoothSeconds">Within that time the planned torques have at most a corner or a jump, s.</param>
    /// <param name="sink">Takes every step; null when nobody wants them.</param>
    public TraceRecorder(MoveRun run, double ratio, Func<double, (double Needed, double Available)> planned, Func<double, (double From, double To)> held, double smoothSeconds, IStepSink? sink)
    {
        _run = run;
        (_planned, _held) = (planned, held);
        _sink = sink;
        _step = run.Choice.StepSeconds;
        _smooth = (long)Math.Clamp(smoothSeconds / _step, 1.0, 1e9);
        _slewEnd = run.Plan.SlewSeconds;
        _ratePerRadian = 1.0 / (_step * ratio);

        // A run goes on to the end of the block in which its last step lies.
        double steps = Math.Ceiling(run.Plan.EndSeconds / _step) + MoveRun.BlockSteps;
        _length = (int)Math.Max(1.0, Math.Ceiling(steps / MostStretches));
        Trace = new Trace((int)Math.Ceiling(steps / _length) + 1);
        _settling = new SettlingCloseUp(Trace.Settling, steps - (_slewEnd / _step));
        _loss = new LossCloseUp(_step);
        Begin();
    }

    public Trace Trace { get; }

    /// <summary>Takes a step that was just made.</summary>
    /// <param name="step">The step.</param>
    /// <param name="reading">Readings of the step.</param>
    /// <param name="planned">Planned axis angle at its end, rad.</param>
    /// <param name="loadAngle">Load angle, electrical rad.</param>
    /// <param name="settleError">Payload less plan and periodic error, rad.</param>
    /// <param name="beyond">When the load angle passed pi and has not come back, s; not a number when it has.</param>
    // Compiled for speed at the first call: a run is over before the runtime would get to it by itself.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void See(in StepContext step, in MotorReading reading, double planned, double loadAngle, double settleError, double beyond)
    {
        double from = step.StartSeconds, to = from + step.StepSeconds;
        ref StepValues row = ref _rows[_filled++];
        (double a, double b) = _run.Currents;
        row[(int)TraceQuantity.PlannedAngleRadians] = planned;
        row[(int)TraceQuantity.PlannedRateRadiansPerSecond] = (step.PlanEndRadians - step.PlanStartRadians) * _ratePerRadian;
        row[(int)TraceQuantity.ActualRateRadiansPerSecond] = _run.AxisSpeed;
        row[(int)TraceQuantity.MotorSpeedRadiansPerSecond] = _run.RotorSpeed;
        row[(int)TraceQuantity.AxisErrorRadians] = _run.AxisRadians - planned;
        row[(int)TraceQuantity.PayloadErrorRadians] = _run.PayloadRadians - planned;
        row[(int)TraceQuantity.SettleErrorRadians] = settleError;
        row[(int)TraceQuantity.LoadAngleRadians] = loadAngle;
        row[(int)TraceQuantity.MotorTorqueNewtonMetres] = _run.MotorTorque;
        row[(int)TraceQuantity.PhaseACurrentAmperes] = a;
        row[(int)TraceQuantity.PhaseBCurrentAmperes] = b;
        row[(int)TraceQuantity.CurrentAmplitudeAmperes] = Math.Sqrt((a * a) + (b * b));
        row[(int)TraceQuantity.Saturated] = reading.Saturated ? 1.0 : 0.0;
        row[(int)TraceQuantity.BusVolts] = reading.BusVolts;
        row[(int)TraceQuantity.SupplyCurrentAmperes] = reading.SupplyAmperes;
        row[(int)TraceQuantity.WindingCelsius] = _run.Celsius;
        row[(int)TraceQuantity.MeshTorqueNewtonMetres] = _run.MeshTorque;
        row[(int)TraceQuantity.ClutchSlipRadians] = _run.SlipRadians;
        row[(int)TraceQuantity.FullStepping] = _run.FullStepping ? 1.0 : 0.0;
        if (_sink is not null)
        {
            (row[(int)TraceQuantity.NeededTorqueNewtonMetres], row[(int)TraceQuantity.AvailableTorqueNewtonMetres]) = _planned(to);
            (row[(int)TraceQuantity.HeldFromRadians], row[(int)TraceQuantity.HeldToRadians]) = _held(to);
            _sink.Take(new StepSample(to, row[..TraceQuantities.Count]));
        }

        _to = to;
        _seen++;
        if (++_steps == _length)
        {
            Close();
        }
        else if (_filled == Rows)
        {
            Gather();
        }

        if (to > _slewEnd)
        {
            _settling.See(from, to, settleError);
        }

        _loss.See(to, loadAngle, beyond);
    }

    /// <summary>Puts away what is open at the end of the run.</summary>
    /// <param name="lostAt">When sync was lost, s; null when it was not.</param>
    public void Finish(double? lostAt)
    {
        if (_steps > 0)
        {
            Close();
        }

        _settling.Finish();
        if (lostAt is { } lost)
        {
            _loss.Finish(lost, Trace.Loss);
        }

        Plan();
    }

    // Compared and chosen, not by the minimum of the machine: what is not a number is passed over, on every processor alike.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Gather()
    {
        ref double rows = ref _rows[0][0];
        for (nuint i = 0; i < StepValues.Length; i += 2 * Vector)
        {
            // Two vectors at a time: each waits for its own comparison, and the other fills the wait.
            nuint j = i + Vector;
            Vector256<double> least = Vector256.LoadUnsafe(ref _least[0], i), greatest = Vector256.LoadUnsafe(ref _greatest[0], i), sum = Vector256.LoadUnsafe(ref _sum[0], i);
            Vector256<double> otherLeast = Vector256.LoadUnsafe(ref _least[0], j), otherGreatest = Vector256.LoadUnsafe(ref _greatest[0], j), otherSum = Vector256.LoadUnsafe(ref _sum[0], j);
            nuint end = (nuint)(_filled * StepValues.Length);
            for (nuint row = 0; row < end; row += StepValues.Length)
            {
                Vector256<double> now = Vector256.LoadUnsafe(ref rows, row + i), other = Vector256.LoadUnsafe(ref rows, row + j);
                least = Vector256.ConditionalSelect(Vector256.LessThan(now, least), now, least);
                otherLeast = Vector256.ConditionalSelect(Vector256.LessThan(other, otherLeast), other, otherLeast);
                greatest = Vector256.ConditionalSelect(Vector256.GreaterThan(now, greatest), now, greatest);
                otherGreatest = Vector256.ConditionalSelect(Vector256.GreaterThan(other, otherGreatest), other, otherGreatest);
                sum += now;
                otherSum += other;
            }

            least.StoreUnsafe(ref _least[0], i);
            otherLeast.StoreUnsafe(ref _least[0], j);
            greatest.StoreUnsafe(ref _greatest[0], i);
            otherGreatest.StoreUnsafe(ref _greatest[0], j);
            sum.StoreUnsafe(ref _sum[0], i);
            otherSum.StoreUnsafe(ref _sum[0], j);
        }

        _filled = 0;
    }

    private void Close()
    {
        Gather();
        for (int i = 0; i < TraceQuantities.Count; i++)
        {
            if (_least[i] > _greatest[i])
            {
                (_least[i], _greatest[i]) = (double.NaN, double.NaN);
            }

            _sum[i] /= _steps;
        }

        Trace.Add(_from, _to, _least[..TraceQuantities.Count], _sum[..TraceQuantities.Count], _greatest[..TraceQuantities.Count]);
        _from = _to;
        Begin();
    }

    private void Begin()
    {
        ((Span<double>)_least).Fill(double.PositiveInfinity);
        ((Span<double>)_greatest).Fill(double.NegativeInfinity);
        ((Span<double>)_sum).Clear();
        _steps = 0;
    }

    /// <summary>Fills in the planned torques, and how far they leave the field to hold the rotor.</summary>
    private void Plan()
    {
        Plan(TraceQuantity.NeededTorqueNewtonMetres, TraceQuantity.AvailableTorqueNewtonMetres, _planned);
        Plan(TraceQuantity.HeldFromRadians, TraceQuantity.HeldToRadians, _held);
    }

    private void Plan(TraceQuantity first, TraceQuantity second, Func<double, (double One, double Other)> planned)
    {
        TraceRange ones = Trace[first], others = Trace[second];
        for (int i = 0; i < Trace.Count; i++)
        {
            long begin = ((long)i * _length) + 1;
            (SmoothRange one, SmoothRange other) = SmoothRange.Of(begin, Math.Min(begin + _length - 1, _seen), _smooth, At);
            ones.Set(i, one.Least, one.Mean, one.Greatest);
            others.Set(i, other.Least, other.Mean, other.Greatest);
        }

        // The end of a step, counted from 1 on, to the last bit as it was seen.
        (double One, double Other) At(long step) => planned(((step - 1) * _step) + _step);
    }

    /// <summary>A number for each quantity, and some over, so that vectors fit.</summary>
    [InlineArray(Length)]
    private struct StepValues
    {
        public const int Length = 24;

        private double _first;
    }
}
