using System.Runtime.CompilerServices;
using AxisSim.Core.Numerics;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What changes slowly: evaluated at both ends of a block of steps and taken as linear between.</summary>
/// <remarks>Laws: <see cref="Payloads.MountLoad"/> (gravity, inertia), <see cref="Gearing.PeriodicErrorLaw"/>, <see cref="Motors.Winding"/>.</remarks>
internal static class LaneBlock
{
    /// <summary>Sets the slow terms for a block that begins; the axis is taken to keep its speed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Begin(ref LaneState state, ref LaneParameters p, ref LaneDisturbance disturbance, in LaneTerms terms, bool shaft)
    {
        V half = Op.Create(-0.5);
        V span = Op.Create((double)LaneLimits.BlockSteps);
        V perSpan = Op.Create(1.0 / LaneLimits.BlockSteps);
        if (terms.Outside)
        {
            V axis = Op.FusedMultiplyAdd(half, state.AxisSpeed, state.Axis);
            LaneMath.SinCos(axis, out V sin, out V cos);
            LaneMath.Advance(sin, cos, span * state.AxisSpeed, out V sinThen, out V cosThen);
            V from = Outside(ref p, sin, cos, disturbance.FromCos, disturbance.FromSin, disturbance.FromRateSquare, terms) + disturbance.FromWind;
            V to = Outside(ref p, sinThen, cosThen, disturbance.ToCos, disturbance.ToSin, disturbance.ToRateSquare, terms) + disturbance.ToWind;
            state.Torque = from;
            state.TorqueRate = (to - from) * perSpan;
        }

        if (terms.Inertia)
        {
            V factor = Inertia(ref p, disturbance.FromCos, disturbance.FromSin);
            state.Factor = factor;
            state.FactorRate = (Inertia(ref p, disturbance.ToCos, disturbance.ToSin) - factor) * perSpan;
        }

        V plain = p.WormPerNode;
        if (!terms.Error)
        {
            state.Gear = plain;
            state.Lead = -state.Slip;
            state.LoadKick = p.NodeKick + p.MeshFrictionOdd;
            return;
        }

        V speed = shaft ? state.ShaftSpeed : state.RotorSpeed;
        V worm = Op.FusedMultiplyAdd(half, speed, shaft ? state.Shaft : state.Rotor) * plain;
        V rate = speed * plain;
        V error = Error(ref p, worm, span * rate, terms, out V slope, out V then);
        state.Gear = Op.FusedMultiplyAdd(plain, slope, plain);
        state.Lead = Op.FusedMultiplyAdd(-slope, worm, error) - state.Slip;
        state.LeadRate = Op.FusedMultiplyAdd(-slope, rate, (then - error) * perSpan);
        state.LoadKick = Op.FusedMultiplyAdd(p.NodeKick, slope, p.NodeKick + p.MeshFrictionOdd);
    }

    /// <summary>Warms the windings by what the block has cost them.</summary>
    /// <param name="state">State.</param>
    /// <param name="p">Constants.</param>
    /// <param name="slewing">Share of the block that lies in the axis' own slew.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Warm(ref LaneState state, ref LaneParameters p, V slewing)
    {
        state.SlewColdJoules = Op.FusedMultiplyAdd(state.CopperJoules * slewing, p.ColdResistance / state.Resistance, state.SlewColdJoules);
        V end = Op.FusedMultiplyAdd(state.CopperJoules * p.StepsPerSecond * Op.Create(1.0 / LaneLimits.BlockSteps), p.ThermalResistance, p.Ambient);
        state.Celsius = Op.FusedMultiplyAdd(state.Celsius - end, p.ThermalDecay, end);
        state.CopperJoules = Op.Create(0.0);
        Winding(ref state, ref p);
    }

    /// <summary>Sets what follows from the winding's temperature.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Winding(ref LaneState state, ref LaneParameters p)
    {
        V one = Op.Create(1.0);
        V resistance = p.ColdResistance * Op.FusedMultiplyAdd(p.ResistanceGrowth, state.Celsius - Op.Create(Motors.Winding.ReferenceCelsius), one);
        V x = p.StepSeconds * resistance / p.Inductance;
        state.Resistance = resistance;
        state.Conductance = one / resistance;
        state.WindingDecay = LaneMath.Exp(-x);
        state.WindingShare = PhaseLaw.Share(x, state.WindingDecay);
        state.StepConductance = state.Conductance * (one - state.WindingDecay);
        state.EmfKick = p.EmfConstant * state.StepConductance;
        state.Reach = p.SupplyVolts * state.StepConductance;
    }

    /// <summary>Step over the time constant of the windings.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Circuit(ref LaneState state, ref LaneParameters p) => p.StepSeconds * state.Resistance / p.Inductance;

    /// <summary>Sets the decays over both parts of a step in which the command changes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void SplitDecays(V split, ref LaneSplitDecays decays, ref LaneState state, ref LaneParameters p) => SplitDecays(split, ref decays, Circuit(ref state, ref p), p.RegulatorRate);

    /// <summary>The same of lanes from several vectors.</summary>
    /// <param name="split">End of the first part as a share of the step.</param>
    /// <param name="decays">Takes the decays.</param>
    /// <param name="circuit">Step over the time constant of the windings.</param>
    /// <param name="regulator">Step over that of the regulator.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SplitDecays(V split, ref LaneSplitDecays decays, V circuit, V regulator)
    {
        V first = split;
        V second = Op.Create(1.0) - first;
        (decays.FirstRegulator, decays.FirstRegulatorShare) = Decay(first * regulator);
        (decays.FirstWinding, decays.FirstWindingShare) = Decay(first * circuit);
        (decays.SecondRegulator, decays.SecondRegulatorShare) = Decay(second * regulator);
        (decays.SecondWinding, decays.SecondWindingShare) = Decay(second * circuit);
    }

    /// <summary>Angle of the payload less the periodic error, at the end of the last step, rad.</summary>
    /// <param name="state">State.</param>
    /// <param name="p">Constants.</param>
    /// <param name="steps">Steps of the block so far.</param>
    /// <param name="shaft">Whether the worm shaft is a body of its own.</param>
    /// <param name="payload">Whether the payload is.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Pointing(ref LaneState state, ref LaneParameters p, double steps, bool shaft, bool payload)
    {
        V half = Op.Create(-0.5);
        V node = shaft ? Op.FusedMultiplyAdd(half, state.ShaftSpeed, state.Shaft) : Op.FusedMultiplyAdd(half, state.RotorSpeed, state.Rotor);
        V error = Op.FusedMultiplyAdd(node, state.Gear - p.WormPerNode, Op.FusedMultiplyAdd(state.LeadRate, Op.Create(steps), state.Lead + state.Slip));
        V angle = payload ? Op.FusedMultiplyAdd(half, state.PayloadSpeed, state.Payload) : Op.FusedMultiplyAdd(half, state.AxisSpeed, state.Axis);
        return angle - error;
    }

    /// <summary>Periodic error and its slope at an angle of the worm (rad at the axis), and the error a turn further.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Error(ref LaneParameters p, V worm, V turn, in LaneTerms terms, out V slope, out V then)
    {
        LaneMath.SinCos(Op.FusedMultiplyAdd(p.WormTurns, worm, p.ErrorFirstPhase), out V sin, out V cos);
        LaneMath.Advance(sin, cos, p.WormTurns * turn, out V sinThen, out _);
        V error = p.ErrorFirst * sin;
        then = p.ErrorFirst * sinThen;
        slope = p.ErrorFirst * p.WormTurns * cos;
        if (terms.SecondHarmonic)
        {
            V twice = p.WormTurns + p.WormTurns;
            LaneMath.SinCos(Op.FusedMultiplyAdd(twice, worm, p.ErrorSecondPhase), out sin, out cos);
            LaneMath.Advance(sin, cos, twice * turn, out sinThen, out _);
            error = Op.FusedMultiplyAdd(p.ErrorSecond, sin, error);
            then = Op.FusedMultiplyAdd(p.ErrorSecond, sinThen, then);
            slope = Op.FusedMultiplyAdd(p.ErrorSecond * twice, cos, slope);
        }

        if (terms.Runout)
        {
            LaneMath.SinCos(worm + p.ErrorRunoutPhase, out sin, out cos);
            LaneMath.Advance(sin, cos, turn, out sinThen, out _);
            error = Op.FusedMultiplyAdd(p.ErrorRunout, sin, error);
            then = Op.FusedMultiplyAdd(p.ErrorRunout, sinThen, then);
            slope = Op.FusedMultiplyAdd(p.ErrorRunout, cos, slope);
        }

        return error;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (V Decay, V Share) Decay(V x)
    {
        V decay = LaneMath.Exp(-x);
        return (decay, PhaseLaw.Share(x, decay));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Outside(ref LaneParameters p, V sin, V cos, V otherCos, V otherSin, V otherRateSquare, in LaneTerms terms)
    {
        V along = Op.FusedMultiplyAdd(p.Gravity2, otherSin, Op.FusedMultiplyAdd(p.Gravity1, otherCos, p.Gravity0));
        V across = Op.FusedMultiplyAdd(p.Gravity5, otherSin, Op.FusedMultiplyAdd(p.Gravity4, otherCos, p.Gravity3));
        V torque = Op.FusedMultiplyAdd(along, cos, across * sin);
        if (!terms.Inertia)
        {
            return torque;
        }

        // Centrifugal torque of the turning polar axis: half the slope of its inertia times its rate squared.
        V twiceSin = sin * cos * Op.Create(2.0);
        V twiceCos = Op.FusedMultiplyAdd(cos, cos, -(sin * sin));
        V slope = Op.FusedMultiplyAdd(p.InertiaHalfSlope1, sin, Op.FusedMultiplyAdd(p.InertiaHalfSlope2, cos, Op.FusedMultiplyAdd(p.InertiaHalfSlope3, twiceSin, p.InertiaHalfSlope4 * twiceCos)));
        return Op.FusedMultiplyAdd(slope, otherRateSquare, torque);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Inertia(ref LaneParameters p, V cos, V sin)
    {
        V twiceSin = sin * cos * Op.Create(2.0);
        V twiceCos = Op.FusedMultiplyAdd(cos, cos, -(sin * sin));
        return Op.FusedMultiplyAdd(p.Inertia1, cos, Op.FusedMultiplyAdd(p.Inertia2, sin, Op.FusedMultiplyAdd(p.Inertia3, twiceCos, Op.FusedMultiplyAdd(p.Inertia4, twiceSin, p.Inertia0))));
    }
}
