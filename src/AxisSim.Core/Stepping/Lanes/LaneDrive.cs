using System.Runtime.CompilerServices;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The commands of a block in which no plan, mode or current changes, for lanes that each have a plan of their own.</summary>
/// <remarks>
/// The laws are <see cref="Motion.MotorPlan"/>, <see cref="Drives.MicrostepTable"/> and <see cref="Drives.PhaseCommand"/>, operation by operation in the same order and
/// none of them fused, so that a lane gets to the last bit the command that <see cref="LaneCommands"/> gives it in a block of any other kind.
/// </remarks>
internal static class LaneDrive
{
    private const int BlockSteps = LaneLimits.BlockSteps;
    private const double QuarterTurn = 0.5 * Math.PI;
    private const double QuarterTurnsPerRadian = 2.0 / Math.PI;

    // Added to a whole number it leaves that in the low bits.
    private const double Rounder = 6755399441055744.0;

    /// <summary>Sets the commands of a block's steps, and what kinds of steps they are.</summary>
    /// <param name="plan">Plans of the lanes.</param>
    /// <param name="tables">Rows of the table of microsteps of each lane.</param>
    /// <param name="times">Times of the steps.</param>
    /// <param name="moments">Room for the moments of a block, one more than its steps.</param>
    /// <param name="commands">Takes the commands, in amperes.</param>
    /// <param name="kinds">Takes the kinds.</param>
    /// <returns>Planned angle at the end of the block, full steps.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static V Fill(ref LanePlan plan, ReadOnlySpan<Drives.MicrostepRow[]> tables, in LaneTimes times, ref LaneMicrostep moments, ref LaneCommand commands, Span<LaneStepKind> kinds)
    {
        V zero = Op.Create(0.0);
        V position = plan.Piece.PositionAt(times.Start(0));
        bool damped = !Op.EqualsAll(plan.Damped, zero);
        moments.Angle = plan.Teeth * position;
        for (int k = 0; k < BlockSteps; k++)
        {
            V end = plan.Piece.PositionAt(times.Start(k + 1));
            ref LaneCommand command = ref Unsafe.Add(ref commands, k);
            double probe = times.Probe(k);
            command.PlanRate = plan.StepsPerRadian * (end - position);
            command.Probe = Op.ConditionalSelect(Op.LessThan(Op.Create(times.Start(k)), plan.ProbeEnd), Op.Create(probe), zero);
            kinds[k] = new LaneStepKind(false, LaneLevel.Unity, LaneLevel.Unity, damped || probe != 0.0, mixed: true);
            position = end;
            Unsafe.Add(ref moments, k + 1).Angle = plan.Teeth * position;
        }

        if (!Op.EqualsAll(plan.FullStepping, Op.Create(1.0)))
        {
            Microsteps(ref plan, tables, ref moments, ref commands);
        }

        if (!Op.EqualsAll(plan.FullStepping, zero))
        {
            FullSteps(ref plan, ref moments, ref commands, kinds);
        }

        return plan.StepsPerRadian * position;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static void Microsteps(ref LanePlan plan, ReadOnlySpan<Drives.MicrostepRow[]> tables, ref LaneMicrostep moments, ref LaneCommand commands)
    {
        V zero = Op.Create(0.0);
        V one = Op.Create(1.0);
        V level = plan.Level;
        for (int k = 0; k <= BlockSteps; k++)
        {
            ref LaneMicrostep moment = ref Unsafe.Add(ref moments, k);
            V cell = (moment.Angle * plan.CellsPerRadian) + Op.Create(0.5);
            V whole = Op.Floor(cell);
            V row = whole - (Op.Floor(whole * plan.PerCell) * plan.Cells);

            // The quotient may be rounded across a whole number.
            row = Op.ConditionalSelect(Op.LessThan(row, zero), row + plan.Cells, row);
            row = Op.ConditionalSelect(Op.LessThan(row, plan.Cells), row, row - plan.Cells);
            moment.Cell = cell;
            moment.Row = row + Op.Create(Rounder);
        }

        Fetch(tables, ref moments);
        V fromCell = Op.Floor(moments.Cell);
        Numerics.RowOps.Columns(ref moments.Rows0, out V fromCos, out V fromSin, out V fromCosSum, out V fromSinSum);
        for (int k = 0; k < BlockSteps; k++)
        {
            ref LaneCommand command = ref Unsafe.Add(ref commands, k);
            ref LaneMicrostep moment = ref Unsafe.Add(ref moments, k + 1);
            V from = Unsafe.Add(ref moments, k).Cell;
            V to = moment.Cell;
            V toCell = Op.Floor(to);
            Numerics.RowOps.Columns(ref moment.Rows0, out V toCos, out V toSin, out V toCosSum, out V toSinSum);
            V cos = fromCos;
            V sin = fromSin;
            if (!Op.EqualsAll(fromCell, toCell))
            {
                V r = from - fromCell;
                V q = to - toCell;
                V jump = Op.Abs(toCell - fromCell);
                V span = to - from;
                V first = zero;
                V second = zero;
                bool far = Op.GreaterThanAll(jump, one);
                if (!far)
                {
                    var rises = Op.GreaterThan(toCell, fromCell);
                    first = Op.ConditionalSelect(rises, one - r, r);
                    second = Op.ConditionalSelect(rises, q, one - q);
                    span = Op.ConditionalSelect(Op.GreaterThan(jump, one), span, first + second);
                }

                V scale = one / span;
                cos = (toCosSum - fromCosSum + (q * toCos) - (r * fromCos)) * scale;
                sin = (toSinSum - fromSinSum + (q * toSin) - (r * fromSin)) * scale;
                if (!far)
                {
                    var beyond = Op.GreaterThan(jump, one);
                    var same = Op.Equals(fromCell, toCell);
                    cos = Op.ConditionalSelect(beyond, cos, ((first * fromCos) + (second * toCos)) * scale);
                    sin = Op.ConditionalSelect(beyond, sin, ((first * fromSin) + (second * toSin)) * scale);
                    cos = Op.ConditionalSelect(same, fromCos, cos);
                    sin = Op.ConditionalSelect(same, fromSin, sin);
                }
            }

            command.FirstA = level * cos;
            command.FirstB = level * sin;
            (fromCell, fromCos, fromSin, fromCosSum, fromSinSum) = (toCell, toCos, toSin, toCosSum, toSinSum);
        }
    }

    /// <summary>Puts the row of each lane beside those of its neighbours.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static void Fetch(ReadOnlySpan<Drives.MicrostepRow[]> tables, ref LaneMicrostep moments)
    {
        for (int lane = 0; lane < tables.Length; lane++)
        {
            Drives.MicrostepRow[] table = tables[lane];
            for (int k = 0; k <= BlockSteps; k++)
            {
                ref LaneMicrostep moment = ref Unsafe.Add(ref moments, k);
                int row = (int)Unsafe.Add(ref Unsafe.As<V, long>(ref moment.Row), lane);
                Unsafe.Add(ref Unsafe.As<V, Drives.MicrostepRow>(ref moment.Rows0), lane) = table[row];
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static void FullSteps(ref LanePlan plan, ref LaneMicrostep moments, ref LaneCommand commands, Span<LaneStepKind> kinds)
    {
        V one = Op.Create(1.0);
        V perRadian = Op.Create(QuarterTurnsPerRadian);
        V level = plan.Level;
        bool all = Op.EqualsAll(plan.FullStepping, one);
        V from = moments.Angle;
        V quarter = Op.Floor(from * perRadian);
        for (int k = 0; k < BlockSteps; k++)
        {
            ref LaneCommand command = ref Unsafe.Add(ref commands, k);
            V to = Unsafe.Add(ref moments, k + 1).Angle;
            V next = Op.Floor(to * perRadian);
            Signs(level, quarter, out V a, out V b);
            V split = one;
            if (!Op.EqualsAll(quarter, next))
            {
                split = ((Op.MaxNative(quarter, next) * Op.Create(QuarterTurn)) - from) / (to - from);
                split = Op.ConditionalSelect(Op.Equals(quarter, next), one, split);
                Signs(level, next, out command.SecondA, out command.SecondB);
            }

            if (!all)
            {
                var mode = Op.Equals(plan.FullStepping, one);
                split = Op.ConditionalSelect(mode, split, one);
                a = Op.ConditionalSelect(mode, a, command.FirstA);
                b = Op.ConditionalSelect(mode, b, command.FirstB);
            }

            command.FirstA = a;
            command.FirstB = b;
            command.Split = split;
            if (!Op.LessThanOrEqualAll(one, split))
            {
                kinds[k] = new LaneStepKind(true, LaneLevel.Unity, LaneLevel.Unity, kinds[k].Pushed, mixed: true);
            }

            (from, quarter) = (to, next);
        }
    }

    /// <summary>Phase currents in a quarter turn of the field.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Signs(V level, V quarter, out V a, out V b)
    {
        var bits = Op.AsInt64(quarter + Op.Create(Rounder));
        var size = Op.AsInt64(level);
        a = Op.AsDouble(size ^ (((bits + Op.Create(1L)) & Op.Create(2L)) << 62));
        b = Op.AsDouble(size ^ ((bits & Op.Create(2L)) << 62));
    }
}
