using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>Steps of one axis, or of a vector of them: drift, kick, drift, with exact currents. Second order in the step.</summary>
/// <remarks>
/// <para>The law is that of <see cref="Dynamics.AxisDynamics{TMotor, TLoad}"/> with a <see cref="Motors.ChopperStepper"/>, whose comments state it; a test holds the two together.
/// Here it is arranged for least work: the rotor in electrical radians, step and inertia folded into the constants, slow terms linear over a block
/// (<c>e(p) - p</c> as a line in p and time), branches only where some lane needs them.</para>
/// <para>State is kept in local variables, hence in registers, over the steps of a call.</para>
/// </remarks>
internal static class LaneStep<TShaft, TPayload, TPower, TPose>
    where TShaft : struct, ISwitch
    where TPayload : struct, ISwitch
    where TPower : struct, ISwitch
    where TPose : struct, ISwitch
{
    /// <summary>Steps <paramref name="first"/> to <paramref name="end"/> (not with it) of a block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run(ref LaneState state, ref LaneParameters p, ref LaneCommand commands, ref LaneStepKind kinds, double stepSeconds, int first, int end)
    {
        V h = Op.Create(stepSeconds);
        V half = Op.Create(0.5 * stepSeconds);
        V more = Op.Create(1.5);
        V less = Op.Create(-0.5);
        V one = Op.Create(1.0);
        V rotor = state.Rotor;
        V rotorSpeed = state.RotorSpeed;
        V rotorSpeedBefore = state.RotorSpeedBefore;
        V axis = state.Axis;
        V axisSpeed = state.AxisSpeed;
        V axisSpeedBefore = state.AxisSpeedBefore;
        V currentA = state.CurrentA;
        V currentB = state.CurrentB;
        V lead = state.ErrorBase - state.Slip;
        V gear = p.WormPerNode * state.Gear;
        V reach = state.Volts * state.Conductance;
        V stepConductance = state.Conductance * (one - state.WindingDecay);
        V stepReach = state.Volts * stepConductance;
        for (int k = first; k < end; k++)
        {
            ref LaneCommand command = ref Unsafe.Add(ref commands, k);
            LaneStepKind kind = Unsafe.Add(ref kinds, k);
            V t = Op.Create((k + 0.5) * stepSeconds);

            // Half a drift, and speeds extrapolated to the middle of the step.
            V rotorMid = Op.FusedMultiplyAdd(half, rotorSpeed, rotor);
            V axisMid = Op.FusedMultiplyAdd(half, axisSpeed, axis);
            V speed = Op.FusedMultiplyAdd(more, rotorSpeed, less * rotorSpeedBefore);
            V rate = Op.FusedMultiplyAdd(more, axisSpeed, less * axisSpeedBefore);

            // Currents and torque, averaged over the step.
            LaneMath.SinCos(rotorMid, out V sin, out V cos);
            V sweep = h * speed;
            V square = sweep * sweep;
            V smooth = Op.FusedMultiplyAdd(square, Op.Create(-1.0 / 24.0), one);
            V emf = p.EmfConstant * speed * smooth;
            V emfA = -(emf * sin);
            V emfB = emf * cos;
            if (TPower.On)
            {
                V volts = Op.FusedMultiplyAdd(state.Volts, more, less * state.VoltsBefore);
                reach = volts * state.Conductance;
                stepReach = volts * stepConductance;
            }

            V startA = currentA;
            V startB = currentB;
            V level = Unsafe.Add(ref p.SlewMicrostepping, kind.FirstLevel);
            V meanA;
            V meanB;
            V limited;
            if (!kind.Split)
            {
                PhaseLaw.Advance(startA, level * command.FirstA, emfA, p.RegulatorDecay, p.RegulatorShare, state.WindingDecay, state.WindingShare, stepConductance, stepReach, out currentA, out meanA, out V limitedA);
                PhaseLaw.Advance(startB, level * command.FirstB, emfB, p.RegulatorDecay, p.RegulatorShare, state.WindingDecay, state.WindingShare, stepConductance, stepReach, out currentB, out meanB, out V limitedB);
                limited = Op.MaxNative(limitedA, limitedB);
            }
            else
            {
                // Back-EMF at the middle of each part: its rate is -Nr w eb for phase A and Nr w ea for phase B.
                V f = command.Split;
                V g = one - f;
                V early = less * g * sweep;
                V late = Op.Create(0.5) * f * sweep;
                V next = Unsafe.Add(ref p.SlewMicrostepping, kind.SecondLevel);
                V rest = one - command.FirstWinding;
                V rest2 = one - command.SecondWinding;
                PhaseLaw.Advance(startA, level * command.FirstA, Op.FusedMultiplyAdd(-early, emfB, emfA), command.FirstRegulator, command.FirstRegulatorShare, command.FirstWinding, command.FirstWindingShare, state.Conductance * rest, reach * rest, out V middle, out V mean, out V limited1);
                PhaseLaw.Advance(middle, next * command.SecondA, Op.FusedMultiplyAdd(-late, emfB, emfA), command.SecondRegulator, command.SecondRegulatorShare, command.SecondWinding, command.SecondWindingShare, state.Conductance * rest2, reach * rest2, out currentA, out V mean2, out V limited2);
                meanA = Op.FusedMultiplyAdd(f, mean, g * mean2);
                PhaseLaw.Advance(startB, level * command.FirstB, Op.FusedMultiplyAdd(early, emfA, emfB), command.FirstRegulator, command.FirstRegulatorShare, command.FirstWinding, command.FirstWindingShare, state.Conductance * rest, reach * rest, out middle, out mean, out V limited3);
                PhaseLaw.Advance(middle, next * command.SecondB, Op.FusedMultiplyAdd(late, emfA, emfB), command.SecondRegulator, command.SecondRegulatorShare, command.SecondWinding, command.SecondWindingShare, state.Conductance * rest2, reach * rest2, out currentB, out mean2, out V limited4);
                meanB = Op.FusedMultiplyAdd(f, mean, g * mean2);
                limited = Op.MaxNative(Op.MaxNative(limited1, limited2), Op.MaxNative(limited3, limited4));
            }

            V changeA = currentA - startA;
            V changeB = currentB - startB;
            V pull = Op.FusedMultiplyAdd(meanB, cos, -(meanA * sin));
            V turn = Op.FusedMultiplyAdd(changeA, cos, changeB * sin);
            V field = Op.FusedMultiplyAdd(pull, smooth, sweep * Op.Create(-1.0 / 12.0) * turn);
            V detent = sin * cos * Op.FusedMultiplyAdd(sin * sin, Op.Create(-2.0), one) * Op.FusedMultiplyAdd(square, Op.Create(-16.0 / 24.0), one);
            V push = Op.FusedMultiplyAdd(p.TorqueKick, field, -(p.DetentKick * detent));
            if (TPower.On)
            {
                state.MotorKick = push;
                Power(ref state, ref p, h, meanA, meanB, changeA, changeB, currentA, currentB, p.EmfConstant * field * speed, limited);
            }

            push = Op.FusedMultiplyAdd(-p.RotorDrag, speed, push);
            push = Op.FusedMultiplyAdd(p.PlanDrag, command.PlanRate, push);
            push = Op.FusedMultiplyAdd(p.ProbeKick, command.Probe, push);

            // Worm mesh.
            V node = rotorMid;
            V nodeSpeed = speed;
            if (TShaft.On)
            {
                node = Op.FusedMultiplyAdd(half, state.ShaftSpeed, state.Shaft);
                nodeSpeed = Op.FusedMultiplyAdd(more, state.ShaftSpeed, less * state.ShaftSpeedBefore);
            }

            V twist = Op.FusedMultiplyAdd(node, gear, Op.FusedMultiplyAdd(state.ErrorRate, t, lead)) - axisMid;
            V twistRate = Op.FusedMultiplyAdd(nodeSpeed, gear, -rate);
            V mesh = Contact(twist, twistRate, p.MeshStiffness, p.MeshDamping, p.HalfBacklash);
            if (!Op.LessThanOrEqualAll(Op.Abs(mesh), p.Clutch))
            {
                mesh = Slip(ref state, ref p, twist, twistRate, mesh, h);
                lead = state.ErrorBase - state.Slip;
            }

            // Kick of the rotor, and of the worm shaft where the stages are elastic. The flanks rub with the force between
            // them, which the slope of the periodic error does not change.
            V overrun;
            V rotorNow = rotorSpeed;
            if (TShaft.On)
            {
                V stage = Contact(Op.FusedMultiplyAdd(rotorMid, p.ShaftPerRotor, -node), Op.FusedMultiplyAdd(speed, p.ShaftPerRotor, -nodeSpeed), p.StageStiffness, p.StageDamping, p.StageHalfBacklash);
                V shaftNow = state.ShaftSpeed;
                V shaftThen = LaneFriction.Kick(shaftNow, Op.FusedMultiplyAdd(-gear, mesh, stage) * p.ShaftKick, mesh * p.WormPerNode * p.ShaftKick, p.ShaftDriving, p.ShaftBack, Op.Create(0.0), out overrun);
                state.Shaft = Op.FusedMultiplyAdd(half, shaftThen - overrun, node);
                state.ShaftSpeedBefore = shaftNow;
                state.ShaftSpeed = shaftThen;
                V stageKick = stage * p.ShaftPerRotor * p.Teeth * p.RotorKick;
                rotorSpeed = LaneFriction.Kick(rotorNow, push - stageKick, stageKick, p.RotorDriving, p.RotorBack, p.RotorCoulombKick, out overrun);
            }
            else
            {
                V meshKick = mesh * p.Teeth * p.RotorKick;
                rotorSpeed = LaneFriction.Kick(rotorNow, Op.FusedMultiplyAdd(-gear, meshKick, push), p.WormPerNode * meshKick, p.RotorDriving, p.RotorBack, p.RotorCoulombKick, out overrun);
            }

            rotor = Op.FusedMultiplyAdd(half, rotorSpeed - overrun, rotorMid);
            rotorSpeedBefore = rotorNow;

            // Kick of the axis, and of the payload where it is flexible.
            V outside = Op.FusedMultiplyAdd(state.TorqueRate, t, state.Torque);
            V kick = p.AxisKick;
            V axisPush = Op.FusedMultiplyAdd(-p.AxisViscous, rate, mesh);
            V factor = one;
            if (TPose.On)
            {
                factor = Op.FusedMultiplyAdd(state.FactorRate, t, state.Factor);
                kick /= factor;
                axisPush -= state.FactorRate * p.AxisInertia * rate;
            }

            if (TPayload.On)
            {
                V payload = Op.FusedMultiplyAdd(half, state.PayloadSpeed, state.Payload);
                V payloadSpeed = Op.FusedMultiplyAdd(more, state.PayloadSpeed, less * state.PayloadSpeedBefore);
                V bond = Op.FusedMultiplyAdd(p.PayloadStiffness, axisMid - payload, p.PayloadDamping * (rate - payloadSpeed));
                axisPush += Op.FusedMultiplyAdd(one - p.PayloadShare, outside, -bond);
                V payloadPush = Op.FusedMultiplyAdd(p.PayloadShare, outside, bond);
                V payloadKick = p.PayloadKick;
                if (TPose.On)
                {
                    payloadPush -= state.FactorRate * p.PayloadInertia * payloadSpeed;
                    payloadKick /= factor;
                }

                V payloadThen = Op.FusedMultiplyAdd(payloadKick, payloadPush, state.PayloadSpeed);
                state.Payload = Op.FusedMultiplyAdd(half, payloadThen, payload);
                state.PayloadSpeedBefore = state.PayloadSpeed;
                state.PayloadSpeed = payloadThen;
            }
            else
            {
                axisPush += outside;
            }

            V axisNow = axisSpeed;
            axisSpeed = LaneFriction.Kick(axisNow, axisPush * kick, p.AxisCoulomb * kick, p.AxisBreakaway * kick, out overrun);
            axis = Op.FusedMultiplyAdd(half, axisSpeed - overrun, axisMid);
            axisSpeedBefore = axisNow;
            if (TPower.On)
            {
                state.MeshTorque = mesh;
            }
        }

        state.Rotor = rotor;
        state.RotorSpeed = rotorSpeed;
        state.RotorSpeedBefore = rotorSpeedBefore;
        state.Axis = axis;
        state.AxisSpeed = axisSpeed;
        state.AxisSpeedBefore = axisSpeedBefore;
        state.CurrentA = currentA;
        state.CurrentB = currentB;
    }

    /// <summary>Torque of a tooth contact, the law of <see cref="Dynamics.MeshContact"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Contact(V twist, V twistRate, V stiffness, V damping, V halfBacklash)
    {
        V zone = twist - Op.MaxNative(-halfBacklash, Op.MinNative(halfBacklash, twist));
        V spring = stiffness * zone;
        V limit = Op.ConditionalSelect(Op.GreaterThan(halfBacklash, Op.Create(0.0)), Op.Abs(spring), Op.Create(double.PositiveInfinity));
        return spring + Op.MinNative(Op.MaxNative(damping * twistRate, -limit), limit);
    }

    /// <summary>The clutch passes its slip torque; the twist beyond what that torque holds flows into the slip.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static V Slip(ref LaneState state, ref LaneParameters p, V twist, V twistRate, V mesh, V h)
    {
        V zero = Op.Create(0.0);
        V limited = Op.CopySign(p.Clutch, mesh);
        V spring = p.MeshStiffness * (twist - Op.MaxNative(-p.HalfBacklash, Op.MinNative(p.HalfBacklash, twist)));
        V elasticRate = Op.ConditionalSelect(Op.GreaterThan(p.MeshDamping, zero), (limited - spring) / p.MeshDamping, zero);
        V slip = Op.MaxNative(zero, Op.CopySign(Op.Create(1.0), limited) * (twistRate - elasticRate)) * h;
        V beyond = Op.MaxNative(zero, (Op.Abs(spring) - p.Clutch) / p.MeshStiffness);
        V change = Op.CopySign(Op.MaxNative(slip, beyond), limited);
        var slips = Op.GreaterThan(Op.Abs(mesh), p.Clutch);
        state.Slip += Op.ConditionalSelect(slips, change, zero);
        return Op.ConditionalSelect(slips, limited, mesh);
    }

    /// <summary>Copper loss, the power taken from the bus, and the bus itself (the law of <see cref="Drives.SupplyBus"/>).</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Power(ref LaneState state, ref LaneParameters p, V h, V meanA, V meanB, V changeA, V changeB, V endA, V endB, V mechanical, V limited)
    {
        V zero = Op.Create(0.0);
        V change = Op.FusedMultiplyAdd(changeA, changeA, changeB * changeB) * Op.Create(1.0 / 12.0);
        V copper = Op.FusedMultiplyAdd(meanA, meanA, Op.FusedMultiplyAdd(meanB, meanB, change)) * state.Resistance;
        V stored = Op.Create(0.5) * p.Inductance * Op.FusedMultiplyAdd(endA, endA, endB * endB);
        V electrical = Op.FusedMultiplyAdd(stored - state.Stored, p.StepsPerSecond, copper + mechanical);
        state.CopperJoules = Op.FusedMultiplyAdd(copper, h, state.CopperJoules);
        (state.MeanA, state.MeanB, state.Copper, state.Stored, state.Electrical, state.Limited) = (meanA, meanB, copper, stored, electrical, limited);

        // An ideal supply has no resistance and keeps its voltage; otherwise C dV/dt = max(0, (Vs - V)/Rs) - P/V.
        V open = p.SupplyVolts;
        V volts = state.Volts;
        V mid = Op.FusedMultiplyAdd(volts, Op.Create(1.5), Op.Create(-0.5) * state.VoltsBefore);
        V load = electrical / Op.MaxNative(mid, Op.Create(0.05) * open);
        V unsupplied = Op.FusedMultiplyAdd(-load, p.BusPerStep, volts);
        V rest = Op.FusedMultiplyAdd(-p.SupplyResistance, load, open);
        V end = Op.FusedMultiplyAdd(volts - rest, p.BusDecay, rest);
        var blocks = Op.GreaterThan(volts, open) | Op.GreaterThan(end, open);
        end = Op.ConditionalSelect(blocks, Op.MaxNative(open, unsupplied), end);
        V drawn = Op.ConditionalSelect(blocks, zero, Op.FusedMultiplyAdd(end - volts, p.StepPerBus, load));
        var ideal = Op.LessThanOrEqual(p.SupplyResistance, zero);
        state.SupplyAmperes = Op.ConditionalSelect(ideal, electrical * p.PerSupplyVolt, drawn);
        state.VoltsBefore = volts;
        state.Volts = Op.ConditionalSelect(ideal, open, Op.MinNative(end, p.BrakeLimit));
    }
}
