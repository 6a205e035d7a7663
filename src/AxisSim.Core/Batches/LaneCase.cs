using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Batches;

/// <summary>A case made ready for a lane.</summary>
internal sealed class LaneCase
{
    /// <summary>Where only the outcome is asked for, time watched beyond the slew, s: a rotor that goes through the target has shown it by then.</summary>
    public const double BeyondSeconds = 0.3;

    // In larger batches (cells of a map, mounts within tolerances) none is like another, and looking for it is a twentieth of a short move.
    private const int MostCompared = 256;

    private readonly BatchCase _item;
    private readonly LaneAxis _ready;
    private readonly double _ratio;

    public LaneCase(int index, BatchCase item, BatchOptions options)
    {
        Index = index;
        Alike = [this];
        Settles = (item.Depth ?? options.Depth) == BatchDepth.Settling;
        _item = item;
        AxisModel model = item.Setup.Axis(item.Axis);
        _ratio = model.Train.TotalRatio;
        _ready = new LaneAxis(item.Setup, item.Axis, new MovePlan(item.Setup), options.StepSeconds, options.StepAsAsked);
        Key = new LaneIdentity([.. Numbers(model).Select(BitConverter.DoubleToInt64Bits)]);
        double held = Settles || UntilSeconds - _ready.ShaftPlan.SlewSeconds < 2.0 * BeyondSeconds ? double.PositiveInfinity : HeldAxis.FromSeconds(item.Setup, item.Axis, _ready);
        HeldFromSeconds = Math.Min(held, UntilSeconds);
    }

    public int Index { get; }

    public StepChoice Choice => _ready.Choice;

    public LaneFeatures Features => _ready.Features;

    public LaneTerms Terms => _ready.Terms;

    public LaneParameters Parameters => _ready.Parameters;

    public LaneState Start => _ready.Start;

    /// <summary>Equal for cases that get the same commands, disturbances and plan.</summary>
    public LaneIdentity Key { get; }

    /// <summary>Cases that take the very same steps, this one the first: one lane serves them all.</summary>
    public IReadOnlyList<LaneCase> Alike { get; private set; }

    public double SlewSeconds => _ready.Plan.SlewSeconds;

    /// <summary>Whether settling and heat are asked for.</summary>
    public bool Settles { get; }

    /// <summary>Time to which it is run, s.</summary>
    public double UntilSeconds => Settles ? _ready.Plan.EndSeconds : _ready.Plan.SlewSeconds + BeyondSeconds;

    /// <summary>Time from which it may be known to keep its place (<see cref="HeldAxis"/>), s; that to which it is run where it is not.</summary>
    public double HeldFromSeconds { get; }

    /// <summary>Planned angle of the axis at a time not before that of the last call with the same cursor, rad.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double PlanAtAxis(double seconds, ref int cursor) => _ready.ShaftPlan.Position(seconds, ref cursor) / _ratio;

    /// <summary>An empty trail for its errors after the slew.</summary>
    public SettleTrail Trail() => SettleJudge.Of(_item.Setup, _item.Axis).Trail(Choice.StepSeconds);

    /// <summary>About how many errors that trail will hold.</summary>
    public long TrailSteps => (long)((UntilSeconds - SlewSeconds) / Choice.StepSeconds) + LaneLimits.BlockSteps;

    /// <summary>A case that failed.</summary>
    public BatchResult Result(MoveEnd end, double seconds) => new(end, seconds, SlewSeconds, double.NaN, double.NaN);

    /// <summary>A case that arrived, with its errors after the slew where settling was asked for.</summary>
    public BatchResult Result(SettleTrail? errors, in LaneState state)
    {
        if (errors is null)
        {
            return Result(MoveEnd.Arrives, double.NaN);
        }

        SettleJudge judge = SettleJudge.Of(_item.Setup, _item.Axis);
        double? settled = judge.Within(errors, errors.Rest, judge.ToleranceRadians);
        double watts = state.SlewColdJoules / Math.Max(_ready.ShaftPlan.SlewSeconds, Choice.StepSeconds);
        return new BatchResult(settled is null ? MoveEnd.DoesNotSettle : MoveEnd.Arrives, double.NaN, SlewSeconds, settled ?? double.NaN, ContinuousHeat.Of(_item.Setup, _item.Axis, watts).Celsius);
    }

    /// <summary>The first of each set of cases that take the same steps.</summary>
    public static IReadOnlyList<LaneCase> Different(IReadOnlyList<LaneCase> cases)
    {
        if (cases.Count > MostCompared)
        {
            return cases;
        }

        var different = new List<LaneCase>();
        foreach (var alike in cases.GroupBy(c => new LaneIdentity(c.Bits())))
        {
            LaneCase first = alike.First();
            first.Alike = [.. alike];
            different.Add(first);
        }

        return different;
    }

    public LaneCommands Commands() => _ready.Commands();

    public LaneDisturbances Disturbances() => _ready.Disturbances();

    /// <summary>All that its steps and the watch on them follow from, bit for bit.</summary>
    private long[] Bits()
    {
        LaneParameters parameters = Parameters;
        LaneState start = Start;
        ReadOnlySpan<long> row = MemoryMarshal.Cast<LaneParameters, long>(MemoryMarshal.CreateReadOnlySpan(ref parameters, 1));
        ReadOnlySpan<long> state = MemoryMarshal.Cast<LaneState, long>(MemoryMarshal.CreateReadOnlySpan(ref start, 1));
        long parts = 0;
        foreach (bool part in (ReadOnlySpan<bool>)[Features.Shaft, Features.Payload, Features.Power, Features.Pose, Terms.Outside, Terms.Inertia, Terms.Error, Terms.SecondHarmonic, Terms.Runout, Terms.Heat])
        {
            parts = (2 * parts) + (part ? 1 : 0);
        }

        double[] watch = [Choice.StepSeconds, UntilSeconds, HeldFromSeconds, Settles ? SettleJudge.Of(_item.Setup, _item.Axis).RestSeconds : -1.0];
        return [parts, .. MemoryMarshal.Cast<double, long>(watch), .. Key.Bits, .. row, .. state];
    }

    private IEnumerable<double> Numbers(AxisModel model)
    {
        Disturbances wind = _item.Setup.Disturbances;
        return
        [
            model.Motor.RotorTeeth, model.Drive.ChangeoverRadiansPerSecond, model.Drive.CurrentFallDelaySeconds, model.Drive.MicrostepsPerFullStep, UntilSeconds, wind.SyncProbe ? 1.0 : 0.0, model.DampingNewtonMetreSecondsPerRadian != 0.0 ? 1.0 : 0.0,
            wind.WindMetresPerSecond, wind.AirDensityKilogramsPerCubicMetre, wind.DragCoefficient, wind.AreaSquareMetres, wind.LeverMetres, wind.GustMetresPerSecond,
            wind.GustStartSeconds, wind.GustSeconds, wind.TurbulenceIntensity, wind.TurbulenceLengthMetres, wind.TurbulenceSeed,
            .. _ready.ShaftPlan.Numbers,
            .. _ready.Plan.At(_item.Axis.Other()).Numbers,
        ];
    }
}
