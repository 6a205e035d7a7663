using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;
using AxisSim.Core.Motors;

namespace AxisSim.Core.Dynamics;

/// <summary>The step of one axis: drift, kick, drift, with exact currents. Second order in the step.</summary>
/// <remarks>
/// <para>Twist of the worm mesh, at the axis: <c>x = p + e(p) - thx - s</c>; p worm angle at the axis, e periodic error, thx axis angle, s clutch slip (rad).
/// The mesh torque tm (N m) drives the axis and loads the worm's node with <c>tm (1 + e')/n</c>, so that the error's slope conserves energy.</para>
/// <para>A step: half a drift of all angles; torques at the middle (speeds extrapolated to it: <c>1.5 w - 0.5 w_before</c>, without
/// which the scheme is of first order); kick of the speeds, dry friction as an impulse; half a drift. A step allocates nothing.</para>
/// <para>Valid while the step is short against the fastest mode: see <c>StepChoice</c>.</para>
/// </remarks>
internal struct AxisDynamics<TMotor, TLoad>
    where TMotor : struct, IMotorLaw
    where TLoad : struct, ILoadLaw
{
    private readonly AxisParameters _p;
    private readonly double _inverseRotorInertia;
    private readonly double _inverseShaftInertia;
    private readonly double _inverseStageRatio;
    private readonly double _inverseWormRatio;
    private readonly double _inverseAxisInertia;
    private readonly double _inversePayloadInertia;
    private readonly bool _hasShaft;
    private readonly bool _hasAxis;
    private readonly bool _hasPayload;

    public AxisState State;
    public TMotor Motor;
    public TLoad Load;

    public AxisDynamics(AxisParameters parameters, TMotor motor, TLoad load, AxisState start)
    {
        _p = parameters;
        _inverseRotorInertia = 1.0 / parameters.RotorInertia;
        _hasShaft = parameters.ShaftInertia > 0.0;
        _inverseShaftInertia = _hasShaft ? 1.0 / parameters.ShaftInertia : 0.0;
        _inverseStageRatio = 1.0 / parameters.StageRatio;
        _inverseWormRatio = 1.0 / parameters.WormRatio;
        _hasAxis = double.IsFinite(parameters.AxisInertia);
        _inverseAxisInertia = 1.0 / parameters.AxisInertia;
        _hasPayload = parameters.PayloadInertia > 0.0;
        _inversePayloadInertia = _hasPayload ? 1.0 / parameters.PayloadInertia : 0.0;
        State = start;
        State.Restart();
        Motor = motor;
        Load = load;
        MotorTorque = 0.0;
        MeshTorque = 0.0;
    }

    public readonly AxisParameters Parameters => _p;

    /// <summary>Mean motor torque of the last step, N m.</summary>
    public double MotorTorque { get; private set; }

    /// <summary>Mesh torque at the axis in the middle of the last step, N m.</summary>
    public double MeshTorque { get; private set; }

    public readonly bool IsFinite => State.IsFinite && Motor.IsFinite;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Step(in StepContext step)
    {
        double h = step.StepSeconds;
        double half = 0.5 * h;
        double mid = step.StartSeconds + half;

        double rotor = State.Rotor + (half * State.RotorSpeed);
        double axis = State.Axis + (half * State.AxisSpeed);
        double rotorSpeed = (1.5 * State.RotorSpeed) - (0.5 * State.RotorSpeedBefore);
        double axisSpeed = (1.5 * State.AxisSpeed) - (0.5 * State.AxisSpeedBefore);
        double nodeAngle = rotor;
        double nodeSpeed = rotorSpeed;
        if (_hasShaft)
        {
            nodeAngle = State.Shaft + (half * State.ShaftSpeed);
            nodeSpeed = (1.5 * State.ShaftSpeed) - (0.5 * State.ShaftSpeedBefore);
        }

        MotorTorque = Motor.Advance(step, rotor, rotorSpeed);

        // Worm mesh.
        double wormAngle = nodeAngle * _inverseWormRatio;
        (double error, double slope) = Load.PeriodicError(mid, wormAngle);
        double geared = _inverseWormRatio * (1.0 + slope);
        double mesh = 0.0;
        if (_p.Mesh.Stiffness > 0.0)
        {
            double twist = wormAngle + error - axis - State.Slip;
            double twistRate = (nodeSpeed * geared) - axisSpeed;
            mesh = _p.Mesh.Torque(twist, twistRate);
            if (Math.Abs(mesh) > _p.Clutch)
            {
                mesh = Slip(twist, twistRate, mesh, h);
            }
        }

        MeshTorque = mesh;
        double load = mesh * geared;

        // Friction of the flanks follows the force between them, which the slope of the periodic error does not change.
        double meshAtWorm = mesh * _inverseWormRatio;

        // Kick of the rotor, and of the worm shaft where the stages are elastic.
        double push = MotorTorque - (_p.RotorViscous * rotorSpeed) + Load.RotorTorque(step.StartSeconds, h, rotor);
        if (_p.PlanDamping > 0.0)
        {
            push -= _p.PlanDamping * (rotorSpeed - step.PlanRateRadiansPerSecond);
        }

        double newRotorSpeed;
        double overrun;
        if (_hasShaft)
        {
            double twist = (rotor * _inverseStageRatio) - nodeAngle;
            double stage = _p.StageMesh.Torque(twist, (rotorSpeed * _inverseStageRatio) - nodeSpeed);
            double stageLoad = stage * _inverseStageRatio;
            double shaftScale = h * _inverseShaftInertia;
            double newShaftSpeed = DryFriction.Kick(
                State.ShaftSpeed,
                (stage - load) * shaftScale,
                _p.Loss.ResistingPositive(meshAtWorm) * shaftScale,
                _p.Loss.ResistingNegative(meshAtWorm) * shaftScale,
                out double shaftOverrun);
            State.Shaft = nodeAngle + (half * (newShaftSpeed - shaftOverrun));
            State.ShaftSpeedBefore = State.ShaftSpeed;
            State.ShaftSpeed = newShaftSpeed;
            newRotorSpeed = KickRotor(h, push - stageLoad, stageLoad, _p.StageLoss, out overrun);
        }
        else
        {
            newRotorSpeed = KickRotor(h, push - load, meshAtWorm, _p.Loss, out overrun);
        }

        State.Rotor = rotor + (half * (newRotorSpeed - overrun));
        State.RotorSpeedBefore = State.RotorSpeed;
        State.RotorSpeed = newRotorSpeed;

        if (_hasAxis)
        {
            KickAxis(mid, h, axis, axisSpeed, mesh);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly double KickRotor(double h, double push, double load, in Gearing.MeshLoss loss, out double overrun)
    {
        double scale = h * _inverseRotorInertia;
        return DryFriction.Kick(
            State.RotorSpeed,
            push * scale,
            (_p.RotorCoulomb + loss.ResistingPositive(load)) * scale,
            (_p.RotorCoulomb + loss.ResistingNegative(load)) * scale,
            out overrun);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void KickAxis(double mid, double h, double axis, double axisSpeed, double mesh)
    {
        double half = 0.5 * h;
        double factor = Load.InertiaFactor(mid);
        double scale = h * _inverseAxisInertia;
        if (factor != 1.0)
        {
            scale /= factor;
        }

        double push = mesh + Load.AxisTorque(mid, axis) - (_p.AxisViscous * axisSpeed)
            - (Load.InertiaFactorRate * _p.AxisInertia * axisSpeed);
        if (_hasPayload)
        {
            double payload = State.Payload + (half * State.PayloadSpeed);
            double payloadSpeed = (1.5 * State.PayloadSpeed) - (0.5 * State.PayloadSpeedBefore);
            double bond = (_p.PayloadStiffness * (axis - payload)) + (_p.PayloadDamping * (axisSpeed - payloadSpeed));
            push -= bond;
            double payloadPush = bond + Load.PayloadTorque(mid, payload) - (Load.InertiaFactorRate * _p.PayloadInertia * payloadSpeed);
            double newPayloadSpeed = State.PayloadSpeed + (h * _inversePayloadInertia / factor * payloadPush);
            State.Payload = payload + (half * newPayloadSpeed);
            State.PayloadSpeedBefore = State.PayloadSpeed;
            State.PayloadSpeed = newPayloadSpeed;
        }

        push *= scale;
        double resist = _p.AxisCoulomb * scale;
        double overrun = 0.0;
        double newAxisSpeed = State.AxisSpeed == 0.0 && Math.Abs(push) <= _p.AxisBreakaway * scale
            ? 0.0
            : DryFriction.Kick(State.AxisSpeed, push, resist, resist, out overrun);
        State.Axis = axis + (half * (newAxisSpeed - overrun));
        State.AxisSpeedBefore = State.AxisSpeed;
        State.AxisSpeed = newAxisSpeed;
    }

    /// <summary>The clutch passes its slip torque; the twist beyond what that torque holds flows into the slip.</summary>
    private double Slip(double twist, double twistRate, double mesh, double h)
    {
        double limited = Math.CopySign(_p.Clutch, mesh);
        double spring = _p.Mesh.Stiffness * _p.Mesh.DeadZone(twist);
        double elasticRate = _p.Mesh.Damping > 0.0 ? (limited - spring) / _p.Mesh.Damping : 0.0;
        double slip = Math.Max(0.0, (twistRate - elasticRate) * Math.Sign(limited)) * h;
        double beyond = Math.Max(0.0, (Math.Abs(spring) - _p.Clutch) / _p.Mesh.Stiffness);
        State.Slip += Math.CopySign(Math.Max(slip, beyond), limited);
        return limited;
    }
}
