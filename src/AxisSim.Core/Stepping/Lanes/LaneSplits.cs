using System.Numerics;
using System.Runtime.CompilerServices;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Collects the steps in which the command of a lane changes, and works out the decays of their parts for as many of them at a time as a vector holds.</summary>
/// <remarks>Where lanes have plans of their own, few of a vector change their command in the same step.</remarks>
internal struct LaneSplits
{
    private const int BlockSteps = LaneLimits.BlockSteps;
    private static int Numbers => Unsafe.SizeOf<V>() / sizeof(double);

    private V _split;
    private V _circuit;
    private V _regulator;
    private LaneSplitDecays _decays;
    private Places _places;
    private int _count;

    /// <summary>Takes the split steps of a block of one vector.</summary>
    /// <param name="kinds">What the steps are.</param>
    /// <param name="commands">Their commands.</param>
    /// <param name="state">State of the vector.</param>
    /// <param name="p">Its constants.</param>
    /// <param name="all">Decays of all vectors that go together.</param>
    /// <param name="vector">Place of this one among them.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Take(ReadOnlySpan<LaneStepKind> kinds, ref LaneCommand commands, ref LaneState state, ref LaneParameters p, ref LaneSplitDecays all, int vector)
    {
        V circuit = LaneBlock.Circuit(ref state, ref p);
        V regulator = p.RegulatorRate;
        for (int k = 0; k < BlockSteps; k++)
        {
            if (!kinds[k].Split)
            {
                continue;
            }

            V split = Unsafe.Add(ref commands, k).Split;
            ulong lanes = Op.ExtractMostSignificantBits(Op.LessThan(split, Op.Create(1.0)));
            for (; lanes != 0; lanes &= lanes - 1)
            {
                int lane = BitOperations.TrailingZeroCount(lanes);
                Number(ref _split, _count) = Number(ref split, lane);
                Number(ref _circuit, _count) = Number(ref circuit, lane);
                Number(ref _regulator, _count) = Number(ref regulator, lane);
                _places[_count] = (((vector * BlockSteps) + k) * Numbers) + lane;
                _count++;
                if (_count == Numbers)
                {
                    GiveOut(ref all);
                }
            }
        }
    }

    /// <summary>Works out what is collected, and puts it where it belongs.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    public void GiveOut(ref LaneSplitDecays all)
    {
        if (_count == 0)
        {
            return;
        }

        LaneBlock.SplitDecays(_split, ref _decays, _circuit, _regulator);
        for (int i = 0; i < _count; i++)
        {
            // The place of the lane in the first field of its step; the other fields follow a vector apart.
            ref double to = ref Number(ref Unsafe.Add(ref all, _places[i] / Numbers), _places[i] % Numbers);
            ref double from = ref Number(ref _decays, i);
            to = from;
            Unsafe.Add(ref to, Numbers) = Unsafe.Add(ref from, Numbers);
            Unsafe.Add(ref to, 2 * Numbers) = Unsafe.Add(ref from, 2 * Numbers);
            Unsafe.Add(ref to, 3 * Numbers) = Unsafe.Add(ref from, 3 * Numbers);
            Unsafe.Add(ref to, 4 * Numbers) = Unsafe.Add(ref from, 4 * Numbers);
            Unsafe.Add(ref to, 5 * Numbers) = Unsafe.Add(ref from, 5 * Numbers);
            Unsafe.Add(ref to, 6 * Numbers) = Unsafe.Add(ref from, 6 * Numbers);
            Unsafe.Add(ref to, 7 * Numbers) = Unsafe.Add(ref from, 7 * Numbers);
        }

        _count = 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref double Number<T>(ref T value, int index) => ref Unsafe.Add(ref Unsafe.As<T, double>(ref value), index);

    /// <summary>As many places as the widest vector has lanes.</summary>
    [InlineArray(8)]
    private struct Places
    {
        private int _first;
    }
}
