using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Copper loss, the power taken from the bus, and the bus itself, the law of <see cref="Drives.SupplyBus"/>.</summary>
internal static class LanePower
{
    /// <summary>After a step of the currents.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Take(ref LaneState s, ref LaneParameters p, V meanA, V meanB, V changeA, V changeB, V mechanical, V limited)
    {
        V change = Op.FusedMultiplyAdd(changeA, changeA, changeB * changeB) * Op.Create(1.0 / 12.0);
        V copper = Op.FusedMultiplyAdd(meanA, meanA, Op.FusedMultiplyAdd(meanB, meanB, change)) * s.Resistance;
        V stored = Op.Create(0.5) * p.Inductance * Op.FusedMultiplyAdd(s.CurrentA, s.CurrentA, s.CurrentB * s.CurrentB);
        V electrical = Op.FusedMultiplyAdd(stored - s.Stored, p.StepsPerSecond, copper + mechanical);
        s.CopperJoules = Op.FusedMultiplyAdd(copper, p.StepSeconds, s.CopperJoules);
        s.MeanA = meanA;
        s.MeanB = meanB;
        s.Copper = copper;
        s.Stored = stored;
        s.Electrical = electrical;
        s.Limited = limited;

        // An ideal supply has no resistance and keeps its voltage; otherwise C dV/dt = max(0, (Vs - V)/Rs) - P/V.
        V open = p.SupplyVolts;
        V volts = s.Volts;
        V mid = Op.FusedMultiplyAdd(volts, Op.Create(1.5), Op.Create(-0.5) * s.VoltsBefore);
        V load = electrical / Op.MaxNative(mid, Op.Create(0.05) * open);
        V unsupplied = Op.FusedMultiplyAdd(-load, p.BusPerStep, volts);
        V rest = Op.FusedMultiplyAdd(-p.SupplyResistance, load, open);
        V end = Op.FusedMultiplyAdd(volts - rest, p.BusDecay, rest);
        var blocks = Op.GreaterThan(volts, open) | Op.GreaterThan(end, open);
        end = Op.ConditionalSelect(blocks, Op.MaxNative(open, unsupplied), end);
        V drawn = Op.ConditionalSelect(blocks, Op.Create(0.0), Op.FusedMultiplyAdd(end - volts, p.StepPerBus, load));
        var ideal = Op.LessThanOrEqual(p.SupplyResistance, Op.Create(0.0));
        s.SupplyAmperes = Op.ConditionalSelect(ideal, electrical * p.PerSupplyVolt, drawn);

        // The bridge's diodes keep the voltage from turning round; one before of more than three times the new one would extrapolate below zero.
        V next = Op.ConditionalSelect(ideal, open, Op.MinNative(Op.MaxNative(end, Op.Create(0.0)), p.BrakeLimit));
        s.VoltsBefore = Op.MinNative(volts, Op.Create(3.0) * next);
        s.Volts = next;
    }
}
