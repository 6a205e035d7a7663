using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Assemblies;

/// <summary>Gravity, wind, changing inertia, periodic error and the sync probe on one axis, written out term by term.</summary>
/// <remarks>
/// These terms are slow against the step, so they are evaluated at both ends of a block of steps (at the angle that the axis will have there if it
/// keeps its speed) and taken as linear between. Signs: positive torque turns the axis towards greater angles.
/// </remarks>
internal struct PlainLoad : ILoadLaw
{
    private readonly MountLoad _load;
    private readonly MountAxis _axis;
    private readonly MotorPlan _other;
    private readonly PeriodicError _periodic;
    private readonly double _wormTurns;
    private readonly WindTorque _wind;
    private readonly bool _hasPeriodic;
    private readonly SyncProbe _probe;
    private readonly double _inverseWormRatio;
    private readonly bool _shaftIsNode;
    private readonly double _inertiaAtStart;
    private readonly double _payloadShare;
    private readonly bool _inertiaChanges;
    private double _blockStart;
    private double _torque;
    private double _torqueRate;
    private double _factor;
    private double _error;
    private double _errorRate;
    private double _slope;
    private double _worm;
    private double _wormRate;

    public PlainLoad(MountSetup setup, MountAxis axis, MovePlan plan, SyncProbe probe, bool shaftIsNode, double wormRatio)
    {
        AxisModel model = setup.Axis(axis);
        _load = setup.Load;
        _axis = axis;
        _other = plan.At(axis == MountAxis.Polar ? MountAxis.Declination : MountAxis.Polar);
        _periodic = model.Train.Worm.PeriodicError;
        _wormTurns = model.Train.Worm.Ratio;
        _hasPeriodic = _periodic != Core.Gearing.PeriodicError.None;
        _wind = new WindTorque(setup.Disturbances);
        _probe = probe;
        _shaftIsNode = shaftIsNode;
        _inverseWormRatio = 1.0 / wormRatio;
        _inertiaAtStart = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians);
        _payloadShare = model.Flexible?.InertiaShare ?? 0.0;
        _inertiaChanges = axis == MountAxis.Polar && setup.Move.Start.DeclinationRadians != setup.Move.End.DeclinationRadians;
        _factor = 1.0;
    }

    public double InertiaFactorRate { get; private set; }

    public void BeginBlock(in AxisState state, double startSeconds, double blockSeconds)
    {
        double end = startSeconds + blockSeconds;
        double from = Outside(state.Axis, startSeconds);
        double to = Outside(state.Axis + (blockSeconds * state.AxisSpeed), end);
        _blockStart = startSeconds;
        _torque = from;
        _torqueRate = (to - from) / blockSeconds;
        if (_inertiaChanges)
        {
            _factor = _load.Inertia(_axis, _other.Position(startSeconds)) / _inertiaAtStart;
            InertiaFactorRate = ((_load.Inertia(_axis, _other.Position(end)) / _inertiaAtStart) - _factor) / blockSeconds;
        }

        if (_hasPeriodic)
        {
            _worm = (_shaftIsNode ? state.Shaft : state.Rotor) * _inverseWormRatio;
            _wormRate = (_shaftIsNode ? state.ShaftSpeed : state.RotorSpeed) * _inverseWormRatio;
            _error = PeriodicErrorLaw.Value(_periodic, _wormTurns, _worm);
            _slope = PeriodicErrorLaw.Slope(_periodic, _wormTurns, _worm);
            _errorRate = (PeriodicErrorLaw.Value(_periodic, _wormTurns, _worm + (_wormRate * blockSeconds)) - _error) / blockSeconds;
        }
    }

    public readonly double RotorTorque(double startSeconds, double stepSeconds, double rotorRadians) => _probe.Mean(startSeconds, stepSeconds);

    public readonly double AxisTorque(double midSeconds, double axisRadians) =>
        (1.0 - _payloadShare) * (_torque + (_torqueRate * (midSeconds - _blockStart)));

    public readonly double PayloadTorque(double midSeconds, double payloadRadians) =>
        _payloadShare * (_torque + (_torqueRate * (midSeconds - _blockStart)));

    public readonly double InertiaFactor(double midSeconds) => _factor + (InertiaFactorRate * (midSeconds - _blockStart));

    public readonly (double Error, double Slope) PeriodicError(double midSeconds, double wormAxisRadians)
    {
        double s = midSeconds - _blockStart;
        return (_error + (_errorRate * s) + (_slope * (wormAxisRadians - _worm - (_wormRate * s))), _slope);
    }

    /// <summary>Gravity, wind and the other axis' motion at an axis angle and time, N m.</summary>
    public readonly double Outside(double axisRadians, double seconds)
    {
        double other = _other.Position(seconds);
        MountPose pose = _axis == MountAxis.Polar ? new MountPose(axisRadians, other) : new MountPose(other, axisRadians);
        double torque = _load.GravityTorque(_axis, pose) + _wind.At(seconds);
        if (_axis == MountAxis.Declination)
        {
            // The turning polar axis throws the payload outwards: half the slope of its inertia times its rate squared.
            double rate = _other.Velocity(seconds);
            torque += 0.5 * _load.PolarInertiaSlope(axisRadians) * rate * rate;
        }

        return torque;
    }
}
