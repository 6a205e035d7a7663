using System.Runtime.CompilerServices;
using AxisSim.Core.Numerics;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The step of one axis, or of vectors of them: drift, kick, drift, with exact currents. Second order in the step.</summary>
/// <remarks>
/// <para>The law is that of <see cref="Dynamics.AxisDynamics{TMotor, TLoad}"/> with a <see cref="Motors.ChopperStepper"/>, whose comments state it; a test holds the two together.
/// Here it is arranged for least work. The rotor's angle x is in full steps, its speed w in full steps per step of time, so the field turns by <c>D = pi w/2</c> in a step and
/// <c>S = (24/pi)(1 - D^2/24) = 24/pi - (pi/4) w^2</c>. With mean phase currents a, b (A) and their changes da, db over the step, s and c sine and cosine of the field's angle:
/// <c>torque = Km (pi/24) ((b c - a s) S - w (da c + db s))</c>, <c>back-EMF = Km (pi/24) w S</c> times -s and c per unit of w; detent
/// <c>Td 4 s c (1 - 2 s^2)(1 - (pi^2/6) w^2)</c>.</para>
/// <para>Friction of the mesh with the losses p against the load and q with it: <c>|m|(p + q)/2</c> against the motion, and <c>m (p - q)/2</c> with the load, which is the same in
/// any motion. Dry friction that may stop a body is left to <see cref="LaneFriction"/>, when some lane needs it.</para>
/// <para>Vector by vector within a step: what one vector waits for, the processor fills with the next.</para>
/// </remarks>
internal static class LaneStep<TShaft, TPayload, TPower, TPose>
    where TShaft : struct, ISwitch
    where TPayload : struct, ISwitch
    where TPower : struct, ISwitch
    where TPose : struct, ISwitch
{
    /// <summary>Takes steps <paramref name="first"/> to <paramref name="end"/> (not with it) of a block.</summary>
    /// <param name="states">States of the vectors.</param>
    /// <param name="parameters">Their constants.</param>
    /// <param name="commands">Commands of the block's steps; of each vector in turn, if they have their own.</param>
    /// <param name="kinds">What the steps are, likewise.</param>
    /// <param name="stride">Commands from one vector to the next: 0 when they share them.</param>
    /// <param name="allDecays">Decays for steps in which the command changes.</param>
    /// <param name="decaysStride">From one vector to the next.</param>
    /// <param name="vectors">How many.</param>
    /// <param name="first">First step.</param>
    /// <param name="end">End.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run(ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, ref LaneStepKind kinds, int stride, ref LaneSplitDecays allDecays, int decaysStride, int vectors, int first, int end)
    {
        // Steps and vectors that follow each other in kind are taken together; with shared commands all vectors are of one kind.
        for (int k = first; k < end;)
        {
            LaneStepKind kind = Unsafe.Add(ref kinds, k);
            int alike = Alike(ref Unsafe.Add(ref kinds, k), stride, vectors, kind);
            int next = k + 1;
            if (alike == vectors)
            {
                while (next < end && Alike(ref Unsafe.Add(ref kinds, next), stride, vectors, kind) == vectors)
                {
                    next++;
                }
            }

            Some(ref states, ref parameters, ref commands, stride, ref allDecays, decaysStride, kind, alike, k, next);
            for (int i = alike; i < vectors; i += alike)
            {
                kind = Unsafe.Add(ref kinds, k + (i * stride));
                alike = Alike(ref Unsafe.Add(ref kinds, k + (i * stride)), stride, vectors - i, kind);
                Some(
                    ref Unsafe.Add(ref states, i), ref Unsafe.Add(ref parameters, i), ref Unsafe.Add(ref commands, i * stride), stride, ref Unsafe.Add(ref allDecays, i * decaysStride), decaysStride,
                    kind, alike, k, next);
            }

            k = next;
        }
    }

    /// <summary>How many vectors, from the first on, have steps of one kind.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Alike(ref LaneStepKind kinds, int stride, int vectors, LaneStepKind kind)
    {
        if (stride == 0)
        {
            return kinds == kind ? vectors : 0;
        }

        int alike = 0;
        while (alike < vectors && Unsafe.Add(ref kinds, alike * stride) == kind)
        {
            alike++;
        }

        return alike;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Some(ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, int stride, ref LaneSplitDecays decays, int decaysStride, LaneStepKind kind, int vectors, int first, int end)
    {
        if (!kind.Split)
        {
            Vectors<Without, Without>(ref states, ref parameters, ref commands, stride, ref decays, decaysStride, kind.FirstLevel, kind.SecondLevel, kind.Pushed, vectors, first, end);
        }
        else if (!kind.Mixed)
        {
            Vectors<With, Without>(ref states, ref parameters, ref commands, stride, ref decays, decaysStride, kind.FirstLevel, kind.SecondLevel, kind.Pushed, vectors, first, end);
        }
        else
        {
            Vectors<With, With>(ref states, ref parameters, ref commands, stride, ref decays, decaysStride, kind.FirstLevel, kind.SecondLevel, kind.Pushed, vectors, first, end);
        }
    }

    /// <summary>Some steps of one kind.</summary>
    /// <typeparam name="TSplit">Whether the command changes inside the step.</typeparam>
    /// <typeparam name="TMixed">Whether it does so in some lanes only.</typeparam>
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static void Vectors<TSplit, TMixed>(
        ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, int stride, ref LaneSplitDecays allDecays, int decaysStride, LaneLevel firstLevel, LaneLevel secondLevel, bool pushed, int vectors, int first, int end)
        where TSplit : struct, ISwitch
        where TMixed : struct, ISwitch
    {
        for (int n = 0, k = first, i = 0; n < vectors * (end - first); n++, i++)
        {
            if (i == vectors)
            {
                (i, k) = (0, k + 1);
            }

            ref LaneState s = ref Unsafe.Add(ref states, i);
            ref LaneParameters p = ref Unsafe.Add(ref parameters, i);
            ref LaneCommand command = ref Unsafe.Add(ref commands, k + (i * stride));
            V rotor = s.Rotor;
            V speed = s.RotorMidSpeed;
            LaneMath.SinCosOfQuarters(rotor, out V sin, out V cos);
            V square = speed * speed;
            V smooth = Op.FusedMultiplyAdd(square, Op.Create(-Math.PI / 4.0), Op.Create(24.0 / Math.PI));
            V spin = speed * smooth;
            V startA = s.CurrentA;
            V startB = s.CurrentB;
            V level = p.Levels.Of(firstLevel);
            V targetA = level * command.FirstA;
            V targetB = level * command.FirstB;
            V endA = default;
            V endB = default;
            V meanA = default;
            V meanB = default;
            V changeA = default;
            V changeB = default;
            V limited = default;
            if (!TSplit.On || TMixed.On)
            {
                V emf = s.EmfKick * spin;
                V reach = s.Reach;
                if (TPower.On)
                {
                    reach = Op.FusedMultiplyAdd(s.Volts, Op.Create(1.5), Op.Create(-0.5) * s.VoltsBefore) * s.StepConductance;
                }

                endA = PhaseLaw.Advance(startA, targetA, Op.FusedMultiplyAdd(emf, sin, startA * s.WindingDecay), reach, p.RegulatorDecay, p.RegulatorShare, s.WindingShare, out changeA, out meanA, out V limitedA);
                endB = PhaseLaw.Advance(startB, targetB, Op.FusedMultiplyAdd(-emf, cos, startB * s.WindingDecay), reach, p.RegulatorDecay, p.RegulatorShare, s.WindingShare, out changeB, out meanB, out V limitedB);
                limited = Op.MaxNative(limitedA, limitedB);
            }

            if (TSplit.On)
            {
                // Back-EMF at the middle of each part: its rate is -Nr w eb for phase A and Nr w ea for phase B.
                ref LaneSplitDecays decays = ref Unsafe.Add(ref allDecays, k + (i * decaysStride));
                V one = Op.Create(1.0);
                V f = command.Split;
                V g = one - f;
                V emfA = -(p.EmfConstant * spin * sin);
                V emfB = p.EmfConstant * spin * cos;
                V early = Op.Create(-0.25 * Math.PI) * g * speed;
                V late = Op.Create(0.25 * Math.PI) * f * speed;
                V next = p.Levels.Of(secondLevel);
                V conductance = s.Conductance * (one - decays.FirstWinding);
                V conductance2 = s.Conductance * (one - decays.SecondWinding);
                V volts = Op.FusedMultiplyAdd(s.Volts, Op.Create(1.5), Op.Create(-0.5) * s.VoltsBefore);
                V reach = volts * conductance;
                V reach2 = volts * conductance2;
                V free = Op.FusedMultiplyAdd(Op.FusedMultiplyAdd(early, emfB, -emfA), conductance, startA * decays.FirstWinding);
                V middle = PhaseLaw.Advance(startA, targetA, free, reach, decays.FirstRegulator, decays.FirstRegulatorShare, decays.FirstWindingShare, out V change1, out V mean1, out V limited1);
                free = Op.FusedMultiplyAdd(Op.FusedMultiplyAdd(late, emfB, -emfA), conductance2, middle * decays.SecondWinding);
                V endOfA = PhaseLaw.Advance(middle, next * command.SecondA, free, reach2, decays.SecondRegulator, decays.SecondRegulatorShare, decays.SecondWindingShare, out V change2, out V mean2, out V limited2);
                free = Op.FusedMultiplyAdd(Op.FusedMultiplyAdd(-early, emfA, -emfB), conductance, startB * decays.FirstWinding);
                middle = PhaseLaw.Advance(startB, targetB, free, reach, decays.FirstRegulator, decays.FirstRegulatorShare, decays.FirstWindingShare, out V change3, out V mean3, out V limited3);
                free = Op.FusedMultiplyAdd(Op.FusedMultiplyAdd(-late, emfA, -emfB), conductance2, middle * decays.SecondWinding);
                V endOfB = PhaseLaw.Advance(middle, next * command.SecondB, free, reach2, decays.SecondRegulator, decays.SecondRegulatorShare, decays.SecondWindingShare, out V change4, out V mean4, out V limited4);
                V limitedAny = Op.MaxNative(Op.MaxNative(limited1, limited2), Op.MaxNative(limited3, limited4));

                // A lane whose command does not change keeps what it has, to the last bit.
                endA = Chosen<TMixed>(f, endOfA, endA);
                endB = Chosen<TMixed>(f, endOfB, endB);
                meanA = Chosen<TMixed>(f, Op.FusedMultiplyAdd(f, mean1, g * mean2), meanA);
                meanB = Chosen<TMixed>(f, Op.FusedMultiplyAdd(f, mean3, g * mean4), meanB);
                changeA = Chosen<TMixed>(f, change1 + change2, changeA);
                changeB = Chosen<TMixed>(f, change3 + change4, changeB);
                limited = Chosen<TMixed>(f, limitedAny, limited);
            }

            s.CurrentA = endA;
            s.CurrentB = endB;
            V pull = Op.FusedMultiplyAdd(meanB, cos, -(meanA * sin));
            V turn = Op.FusedMultiplyAdd(changeA, cos, changeB * sin);
            V field = Op.FusedMultiplyAdd(pull, smooth, -(speed * turn));
            V detent = sin * cos * Op.FusedMultiplyAdd(sin * sin, Op.Create(-2.0), Op.Create(1.0)) * Op.FusedMultiplyAdd(square, Op.Create(-Math.PI * Math.PI / 6.0), Op.Create(1.0));
            V detentKick = -(p.DetentKick * detent);
            if (TPower.On)
            {
                s.MotorKick = Op.FusedMultiplyAdd(p.TorqueKick, field, detentKick);
                LanePower.Take(ref s, ref p, meanA, meanB, changeA, changeB, p.EmfConstant * field * speed, limited);
            }


            // All that pushes the rotor but the currents, which are known last.
            V push = Op.FusedMultiplyAdd(-p.RotorDrag, speed, detentKick);
            if (pushed)
            {
                push = Op.FusedMultiplyAdd(p.PlanDrag, command.PlanRate, push);
                push = Op.FusedMultiplyAdd(p.ProbeKick, command.Probe, push);
            }

            // Worm mesh.
            V node = TShaft.On ? s.Shaft : rotor;
            V nodeSpeed = TShaft.On ? s.ShaftMidSpeed : speed;
            V t = Op.Create(k + 0.5);
            V twist = Op.FusedMultiplyAdd(node, s.Gear, Op.FusedMultiplyAdd(s.LeadRate, t, s.Lead)) - s.Axis;
            V twistRate = Op.FusedMultiplyAdd(nodeSpeed, s.Gear, -s.AxisMidSpeed);
            V mesh = Contact(twist, twistRate, p.MeshStiffness, p.MeshDamping, p.HalfBacklash, p.MeshFree);
            if (!Kick<Without>(ref s, ref p, field, push, twist, twistRate, mesh, t))
            {
                Stop(ref s, ref p, field, push, twist, twistRate, mesh, t);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Chosen<TMixed>(V split, V changing, V steady)
        where TMixed : struct, ISwitch => TMixed.On ? Op.ConditionalSelect(Op.LessThan(split, Op.Create(1.0)), changing, steady) : changing;

    /// <summary>Torque of a tooth contact, the law of <see cref="Dynamics.MeshContact"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Contact(V twist, V twistRate, V stiffness, V damping, V halfBacklash, V free)
    {
        V spring = stiffness * (twist - Op.MaxNative(-halfBacklash, Op.MinNative(halfBacklash, twist)));
        V limit = Op.MaxNative(Op.Abs(spring), free);
        return spring + Op.MinNative(Op.MaxNative(damping * twistRate, -limit), limit);
    }

    /// <summary>A step in which the clutch slips, or a body may come to rest, in some lane.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Stop(ref LaneState s, ref LaneParameters p, V field, V push, V twist, V twistRate, V mesh, V t)
    {
        V limited = LaneClutch.Slip(ref s, ref p, twist, twistRate, mesh);
        Kick<With>(ref s, ref p, field, push, twist, twistRate, limited, t);
    }

    /// <summary>Kicks all bodies and drifts them to the middle of the next step.</summary>
    /// <returns>False, with nothing changed, when some body passes rest or the clutch slips, and <typeparamref name="TPassing"/> does not allow for it.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Kick<TPassing>(ref LaneState s, ref LaneParameters p, V field, V push, V twist, V twistRate, V mesh, V t)
        where TPassing : struct, ISwitch
    {
        V zero = Op.Create(0.0);
        V size = Op.Abs(mesh);

        // Friction of the flanks follows the force between them, which the slope of the periodic error does not change.
        V rotorSpeed = s.RotorSpeed;
        V odd = zero;
        V friction;
        V shaftSpeed = zero;
        V shaftPush = zero;
        V shaftFriction = zero;
        if (TShaft.On)
        {
            V stage = Contact(Op.FusedMultiplyAdd(s.Rotor, p.ShaftPerRotor, -s.Shaft), Op.FusedMultiplyAdd(s.RotorMidSpeed, p.ShaftPerRotor, -s.ShaftMidSpeed), p.StageStiffness, p.StageDamping, p.StageHalfBacklash, p.StageFree);
            shaftSpeed = s.ShaftSpeed;
            shaftPush = Op.FusedMultiplyAdd(-s.Gear, mesh, stage) * p.ShaftKick;
            shaftFriction = p.ShaftFrictionKick * size;
            odd = p.StageFrictionOdd * stage;
            push = Op.FusedMultiplyAdd(-p.StageKick, stage, push) - odd;
            friction = Op.FusedMultiplyAdd(p.StageFrictionKick, Op.Abs(stage), p.RotorCoulombKick);
        }
        else
        {
            // The load's kick has the odd part of the friction in it.
            push = Op.FusedMultiplyAdd(-s.LoadKick, mesh, push);
            if (TPassing.On)
            {
                odd = p.MeshFrictionOdd * mesh;
            }

            friction = Op.FusedMultiplyAdd(p.MeshFrictionKick, size, p.RotorCoulombKick);
        }

        V rotorThen = Op.FusedMultiplyAdd(p.TorqueKick, field, rotorSpeed + push - Op.CopySign(friction, rotorSpeed));
        V least = rotorSpeed * rotorThen;
        V shaftThen = zero;
        if (TShaft.On)
        {
            shaftThen = shaftSpeed + (shaftPush - (p.ShaftFrictionOdd * mesh)) - Op.CopySign(shaftFriction, shaftSpeed);
            least = Op.MinNative(least, shaftSpeed * shaftThen);
        }

        // Axis, and payload where it is flexible.
        V outside = Op.FusedMultiplyAdd(s.TorqueRate, t, s.Torque);
        V axisSpeed = s.AxisSpeed;
        V drag = p.AxisDrag;
        V coulomb = p.AxisCoulombKick;
        V breakaway = p.AxisBreakawayKick;
        V perFactor = Op.Create(1.0);
        V factorRate = zero;
        if (TPose.On)
        {
            perFactor = Op.Create(1.0) / Op.FusedMultiplyAdd(s.FactorRate, t, s.Factor);
            factorRate = s.FactorRate;
            drag += factorRate;
            coulomb *= perFactor;
            breakaway *= perFactor;
        }

        V bond = zero;
        V torque = mesh + outside;
        if (TPayload.On)
        {
            bond = Op.FusedMultiplyAdd(p.PayloadStiffness, s.Axis - s.Payload, p.PayloadDamping * (s.AxisMidSpeed - s.PayloadMidSpeed));
            torque = Op.FusedMultiplyAdd(-p.PayloadShare, outside, torque) - bond;
        }

        V axisPush = Op.FusedMultiplyAdd(p.AxisKick, torque, -(drag * s.AxisMidSpeed));
        if (TPose.On)
        {
            axisPush *= perFactor;
        }

        V axisThen = axisSpeed + axisPush - Op.CopySign(coulomb, axisSpeed);
        if (!TPassing.On)
        {
            least = Op.MinNative(Op.MinNative(least, axisSpeed * axisThen), p.Clutch - size);
            if (!Op.GreaterThanAll(least, zero))
            {
                return false;
            }
        }

        V half = Op.Create(0.5);
        Move<TPassing>(ref s.Rotor, ref s.RotorSpeed, ref s.RotorMidSpeed, rotorSpeed, rotorThen, Op.FusedMultiplyAdd(p.TorqueKick, field, push + odd), friction + odd, friction - odd, zero);
        if (TShaft.On)
        {
            V shaftOdd = p.ShaftFrictionOdd * mesh;
            Move<TPassing>(ref s.Shaft, ref s.ShaftSpeed, ref s.ShaftMidSpeed, shaftSpeed, shaftThen, shaftPush, shaftFriction + shaftOdd, shaftFriction - shaftOdd, zero);
        }

        if (TPayload.On)
        {
            V speed = s.PayloadSpeed;
            V payloadPush = p.PayloadKick * Op.FusedMultiplyAdd(p.PayloadShare, outside, bond);
            if (TPose.On)
            {
                payloadPush = Op.FusedMultiplyAdd(-factorRate, s.PayloadMidSpeed, payloadPush) * perFactor;
            }

            V then = speed + payloadPush;
            s.Payload += then;
            s.PayloadSpeed = then;
            s.PayloadMidSpeed = Op.FusedMultiplyAdd(half, then - speed, then);
        }

        Move<TPassing>(ref s.Axis, ref s.AxisSpeed, ref s.AxisMidSpeed, axisSpeed, axisThen, axisPush, coulomb, coulomb, breakaway);
        if (TPower.On)
        {
            s.MeshTorque = mesh;
        }

        return true;
    }

    /// <summary>Takes a body to the middle of the next step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Move<TPassing>(ref V angle, ref V speed, ref V midSpeed, V before, V then, V push, V positive, V negative, V breakaway)
        where TPassing : struct, ISwitch
    {
        V half = Op.Create(0.5);
        if (TPassing.On)
        {
            V end = LaneFriction.Passing(before, then, push, positive, negative, breakaway, out V overrun);
            angle += Op.FusedMultiplyAdd(Op.Create(-0.5), overrun, end);
            speed = end;
            midSpeed = Op.FusedMultiplyAdd(half, end - before, end);
        }
        else
        {
            angle += then;
            speed = then;
            midSpeed = Op.FusedMultiplyAdd(half, then - before, then);
        }
    }
}
