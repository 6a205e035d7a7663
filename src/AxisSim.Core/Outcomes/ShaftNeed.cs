using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>Shaft torque that the planned motion needs, quasi-statically.</summary>
/// <remarks>
/// Axis torque <c>t = J a + dJ/dt w + B w + Tc sign(w) - gravity - wind</c>; through the mesh loss to the shaft, <c>t/n</c> plus the loss in the direction of
/// motion; plus the inertia on the rotor's side times its acceleration. Backlash, elasticity and ripple are left out; the
/// motor's own friction belongs to its pull-out torque. At rest only what the gear lets through backwards must be held: nothing
/// with a worm that locks itself. Units N m; the sign is that of a torque towards greater angles.
/// </remarks>
internal sealed class ShaftNeed
{
    private readonly MountSetup _setup;
    private readonly MountAxis _axis;
    private readonly MovePlan _plan;
    private readonly AxisParameters _parameters;
    private readonly MoveLoad _load;
    private readonly double _ratio;
    private readonly MeshLoss _loss;
    private readonly double _rotorSideInertia;

    public ShaftNeed(MountSetup setup, MountAxis axis, MovePlan plan)
    {
        _setup = setup;
        _axis = axis;
        _plan = plan;
        _parameters = AxisAssembly.Parameters(setup, axis);
        AxisModel model = setup.Axis(axis);
        _ratio = model.Train.TotalRatio;
        _load = new MoveLoad(setup, axis, plan);
        _loss = AxisAssembly.TotalLoss(model.Train, setup.Disturbances.ColdGreaseFactor);
        _rotorSideInertia = model.Motor.RotorInertiaKilogramSquareMetres + model.Train.ReflectedTrainInertia;
    }

    /// <summary>Signed motor speed (rad/s) and shaft torque (N m) at a time.</summary>
    public (double Speed, double Torque) At(double seconds)
    {
        MotorPlan own = _plan.At(_axis);
        double angle = own.Position(seconds);
        double rate = own.Velocity(seconds);
        double acceleration = own.Acceleration(seconds);
        double declination = _plan.At(MountAxis.Declination).Position(seconds);
        double inertia = _setup.Load.Inertia(_axis, declination);
        double axisTorque = (inertia * acceleration) + (_parameters.AxisViscous * rate)
            + (_parameters.AxisCoulomb * Math.Sign(rate)) - _load.Outside(angle, seconds);
        if (_axis == MountAxis.Polar)
        {
            axisTorque += _setup.Load.PolarInertiaSlope(declination) * _plan.At(MountAxis.Declination).Velocity(seconds) * rate;
        }

        double load = axisTorque / _ratio;
        double shaft = rate == 0.0 ? load * Math.Max(0.0, 1.0 - _loss.BackDriving) : _loss.InputTorque(load, rate);
        return (rate * _ratio, shaft + (_rotorSideInertia * _ratio * acceleration));
    }
}
