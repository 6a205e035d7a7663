using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>Torque that the axis asks for at a steady rate, at the hardest and at the easiest place of the move: friction, imbalance and wind.</summary>
/// <remarks><c>TL = Tc + B w + max(-gravity - wind)</c> in the direction of motion, never below zero; cold grease counted in. At the easiest place the least takes the
/// place of the greatest, and the torque may be negative: there the load drives. Units N m, rad/s.</remarks>
internal sealed class SteadyLoad
{
    private const int Places = 400;

    private readonly double _viscous;
    private readonly double _dry;
    private readonly double _opposing;
    private readonly double _helping;

    public SteadyLoad(MountSetup setup, MountAxis axis)
    {
        AxisParameters parameters = AxisAssembly.Parameters(setup, axis);
        var plan = new MovePlan(setup);
        var load = new MoveLoad(setup, axis, plan);
        MotorPlan own = plan.At(axis);
        double direction = Math.Sign(own.Position(plan.SlewSeconds) - own.Position(0.0));
        _viscous = parameters.AxisViscous;
        _dry = parameters.AxisCoulomb;
        double[] outside = [.. Enumerable.Range(0, Places + 1).Select(i => plan.SlewSeconds * i / Places).Select(time => -direction * load.Outside(own.Position(time), time))];
        (_opposing, _helping) = (outside.Max(), outside.Min());
    }

    /// <summary>The torque at a rate of the axis, N m.</summary>
    public double Torque(double rateRadiansPerSecond) => Math.Max(0.0, _dry + (_viscous * rateRadiansPerSecond) + _opposing);

    /// <summary>The torque at a rate of the axis at the easiest place, N m; negative where the load drives.</summary>
    public double LeastTorque(double rateRadiansPerSecond) => _dry + (_viscous * rateRadiansPerSecond) + _helping;

    /// <summary>Friction alone at rest, N m.</summary>
    public double Friction => _dry;
}
