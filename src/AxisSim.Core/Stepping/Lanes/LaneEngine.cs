using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Holds the lanes and steps them, vector by vector.</summary>
internal sealed class LaneEngine : ILaneEngine
{
    private const int BlockSteps = LaneLimits.BlockSteps;
    private static int Numbers => Unsafe.SizeOf<V>() / sizeof(double);

    private const int Together = 6;

    private readonly (V Rotor, V Axis, V CurrentA, V CurrentB)[] _before = new (V, V, V, V)[Together];
    private readonly Column<LaneState> _states;
    private readonly Column<LaneParameters> _parameters;
    private readonly Column<LaneCommand> _commands;
    private readonly Column<LaneSplitDecays> _decays;
    private readonly Column<LaneDisturbance> _disturbances;
    private readonly Column<V> _ends;
    private readonly Column<LanePlan> _plans;
    private readonly Drives.MicrostepRow[][] _tables;
    private readonly Column<LaneOtherAxis> _otherAxes;
    private readonly Column<LaneSplits> _splitsOfBlock = new(1);
    private readonly Column<LaneMicrostep> _moments = new(BlockSteps + 1);

    public LaneEngine(int vectors)
    {
        _states = new Column<LaneState>(vectors);
        _parameters = new Column<LaneParameters>(vectors);
        _commands = new Column<LaneCommand>(vectors * BlockSteps);
        _decays = new Column<LaneSplitDecays>(vectors * BlockSteps);
        _disturbances = new Column<LaneDisturbance>(vectors);
        _ends = new Column<V>(vectors);
        _plans = new Column<LanePlan>(vectors);
        _otherAxes = new Column<LaneOtherAxis>(vectors);
        _tables = new Drives.MicrostepRow[vectors * Numbers][];
    }

    public int Width => Numbers;

    public void Put(int lane, in AxisSim.Core.Stepping.Lanes.LaneParameters parameters, in AxisSim.Core.Stepping.Lanes.LaneState state)
    {
        Scatter(parameters, ref _parameters[lane / Numbers], lane % Numbers);
        Scatter(state, ref _states[lane / Numbers], lane % Numbers);
    }

    public AxisSim.Core.Stepping.Lanes.LaneState State(int lane)
    {
        AxisSim.Core.Stepping.Lanes.LaneState state = default;
        Span<double> row = Row(ref state);
        ReadOnlySpan<double> column = Row(ref _states[lane / Numbers]);
        for (int i = 0; i < row.Length; i++)
        {
            row[i] = column[(i * Numbers) + (lane % Numbers)];
        }

        return state;
    }

    public void Copy(int from, int to)
    {
        Copy(ref _states[from / Numbers], from % Numbers, ref _states[to / Numbers], to % Numbers);
        Copy(ref _parameters[from / Numbers], from % Numbers, ref _parameters[to / Numbers], to % Numbers);
        Copy(ref _plans[from / Numbers], from % Numbers, ref _plans[to / Numbers], to % Numbers);
        Copy(ref _otherAxes[from / Numbers], from % Numbers, ref _otherAxes[to / Numbers], to % Numbers);
        Copy(ref _disturbances[from / Numbers], from % Numbers, ref _disturbances[to / Numbers], to % Numbers);
        _tables[to] = _tables[from];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Commands(ReadOnlySpan<AxisSim.Core.Stepping.Lanes.LaneCommand> commands, ReadOnlySpan<AxisSim.Core.Stepping.Lanes.LaneSplitDecays> decays, ReadOnlySpan<LaneStepKind> kinds, bool withDecays)
    {
        for (int k = 0; k < commands.Length; k++)
        {
            bool split = kinds[k].Split;
            _commands[k].Spread(commands[k], split);
            if (split && withDecays)
            {
                _decays[k].Spread(decays[k]);
            }
        }
    }

    public void Command(int step, int lane, in AxisSim.Core.Stepping.Lanes.LaneCommand command) =>
        Scatter(command, ref _commands[(lane / Numbers * BlockSteps) + step], lane % Numbers);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Disturbance(in AxisSim.Core.Stepping.Lanes.LaneDisturbance disturbance) => _disturbances[0].Spread(disturbance);

    public void Disturbance(int lane, in AxisSim.Core.Stepping.Lanes.LaneDisturbance disturbance) => Scatter(disturbance, ref _disturbances[lane / Numbers], lane % Numbers);

    public void OtherAxis(int lane, in AxisSim.Core.Stepping.Lanes.LaneOtherAxis other) => Scatter(other, ref _otherAxes[lane / Numbers], lane % Numbers);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Disturbances(int vectors, in LaneTerms terms, double from, double to, ReadOnlySpan<double> winds)
    {
        for (int i = 0; i < vectors; i++)
        {
            V wind = winds.Length == 1 ? Op.Create(winds[0]) : MemoryMarshal.Read<V>(MemoryMarshal.AsBytes(winds.Slice(i * Numbers, Numbers)));
            _otherAxes[i].Advance(ref _disturbances[i], terms, from, to, wind);
        }
    }

    public void End(double fullSteps) => _ends[0] = Op.Create(fullSteps);

    public void End(int lane, double fullSteps) => Row(ref _ends[lane / Numbers])[lane % Numbers] = fullSteps;

    public void Plan(int lane, in AxisSim.Core.Stepping.Lanes.LanePlan plan, Drives.MicrostepRow[] table)
    {
        Scatter(plan, ref _plans[lane / Numbers], lane % Numbers);
        _tables[lane] = table;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Drive(int vector, in LaneTimes times, Span<LaneStepKind> kinds) =>
        _ends[vector] = LaneDrive.Fill(ref _plans[vector], _tables.AsSpan(vector * Numbers, Numbers), times, ref _moments[0], ref _commands[vector * BlockSteps], kinds);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Block(int vectors, ReadOnlySpan<LaneStepKind> kinds, in LaneJob job, Span<LaneSign> signs, Span<double> record)
    {
        // As many at a time as the nearest cache holds.
        for (int first = 0; first < vectors; first += Together)
        {
            TogetherBlock(vectors, first, Math.Min(Together, vectors - first), kinds, job, signs, record);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void TogetherBlock(int vectors, int first, int count, ReadOnlySpan<LaneStepKind> kinds, in LaneJob job, Span<LaneSign> signs, Span<double> record)
    {
        int stride = job.Shared ? 0 : BlockSteps;
        for (int i = first; i < first + count; i++)
        {
            ref LaneState state = ref _states[i];
            ref LaneParameters p = ref _parameters[i];
            LaneBlock.Begin(ref state, ref p, ref _disturbances[job.Shared ? 0 : i], job.Terms, job.Features.Shaft);
            if (!job.Shared)
            {
                _splitsOfBlock[0].Take(kinds.Slice(i * BlockSteps, BlockSteps), ref _commands[i * BlockSteps], ref state, ref p, ref _decays[0], i);
            }
            else if (job.OwnDecays)
            {
                OwnDecays(kinds, i);
            }

            _before[i - first] = (state.Rotor, state.Axis, state.CurrentA, state.CurrentB);
        }

        _splitsOfBlock[0].GiveOut(ref _decays[0]);
        int decaysStride = job.OwnDecays ? BlockSteps : 0;
        int atOnce = record.IsEmpty ? BlockSteps : 1;
        for (int k = 0; k < BlockSteps; k += atOnce)
        {
            LaneDispatch.Run(
                job.Features, ref _states[first], ref _parameters[first], ref _commands[first * stride], ref Unsafe.Add(ref MemoryMarshal.GetReference(kinds), first * stride), stride,
                ref _decays[first * decaysStride], decaysStride, count, k, k + atOnce);
            for (int i = first; !record.IsEmpty && i < first + count; i++)
            {
                V pointing = LaneBlock.Pointing(ref _states[i], ref _parameters[i], k + 1, job.Features.Shaft, job.Features.Payload);
                Row(ref pointing).CopyTo(record[(((k * vectors) + i) * Numbers)..]);
            }
        }
        for (int i = first; i < first + count; i++)
        {
            ref LaneState state = ref _states[i];
            if (job.Terms.Heat)
            {
                LaneBlock.Warm(ref state, ref _parameters[i], _disturbances[job.Shared ? 0 : i].Slewing);
            }

            (V rotor, V axis, V currentA, V currentB) = _before[i - first];
            bool same = Op.EqualsAll(rotor, state.Rotor) && Op.EqualsAll(axis, state.Axis) && Op.EqualsAll(currentA, state.CurrentA) && Op.EqualsAll(currentB, state.CurrentB)
                && Op.EqualsAll(Op.Create(0.0), state.RotorSpeed) && Op.EqualsAll(Op.Create(0.0), state.AxisSpeed);
            V lag = Op.FusedMultiplyAdd(Op.Create(-0.5), state.RotorSpeed, state.Rotor) - _ends[job.Shared ? 0 : i];
            bool well = Op.LessThanOrEqualAll(Op.Abs(lag), Op.Create(LaneLimits.LostFullSteps)) && Op.EqualsAll(state.Slip, Op.Create(0.0));
            signs[i] = !well ? LaneSign.Attention : same ? LaneSign.Rests : LaneSign.None;
        }
    }

    /// <summary>Decays of the steps that are split, where all lanes have the same steps but not the same circuit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void OwnDecays(ReadOnlySpan<LaneStepKind> kinds, int vector)
    {
        for (int k = 0; k < BlockSteps; k++)
        {
            if (kinds[k].Split)
            {
                LaneBlock.SplitDecays(_commands[k].Split, ref _decays[(vector * BlockSteps) + k], ref _states[vector], ref _parameters[vector]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Scatter<TRow, TColumn>(in TRow row, ref TColumn column, int lane)
        where TRow : unmanaged
        where TColumn : unmanaged
    {
        ReadOnlySpan<double> from = MemoryMarshal.Cast<TRow, double>(MemoryMarshal.CreateReadOnlySpan(in row, 1));
        Span<double> to = Row(ref column);
        for (int i = 0; i < from.Length; i++)
        {
            to[(i * Numbers) + lane] = from[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Copy<TColumn>(ref TColumn from, int fromLane, ref TColumn to, int toLane)
        where TColumn : unmanaged
    {
        ReadOnlySpan<double> source = Row(ref from);
        Span<double> target = Row(ref to);
        for (int i = 0; i < source.Length; i += Numbers)
        {
            target[i + toLane] = source[i + fromLane];
        }
    }

    private static Span<double> Row<T>(ref T value)
        where T : unmanaged => MemoryMarshal.Cast<T, double>(MemoryMarshal.CreateSpan(ref value, 1));

    /// <summary>An array that begins at a cache line, so that no vector straddles two.</summary>
    private sealed class Column<T>
        where T : unmanaged
    {
        private const int Line = 64;
        private readonly byte[] _bytes;
        private readonly int _start;

        public Column(int count)
        {
            _bytes = GC.AllocateArray<byte>((count * Unsafe.SizeOf<T>()) + Line, pinned: true);
            _start = (int)((Line - (Marshal.UnsafeAddrOfPinnedArrayElement(_bytes, 0) % Line)) % Line);
        }

        public ref T this[int index]
        {
            [MethodImpl(MethodImplOptions.AggressiveInlining)]
            get => ref Unsafe.As<byte, T>(ref _bytes[_start + (index * Unsafe.SizeOf<T>())]);
        }
    }
}
