using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>Torque that the axis asks for at a steady rate, at the hardest place of the move: friction, imbalance and wind.</summary>
/// <remarks><c>TL = Tc + B w + max(-gravity - wind)</c> in the direction of motion, never below zero; cold grease counted in. Units N m, rad/s.</remarks>
internal sealed class SteadyLoad
{
    private const int Places = 400;

    private readonly double _viscous;
    private readonly double _dry;
    private readonly double _opposing;

    public SteadyLoad(MountSetup setup, MountAxis axis)
    {
        AxisParameters parameters = AxisAssembly.Parameters(setup, axis);
        var plan = new MovePlan(setup);
        var load = new MoveLoad(setup, axis, plan);
        MotorPlan own = plan.At(axis);
        double direction = Math.Sign(own.Position(plan.SlewSeconds) - own.Position(0.0));
        _viscous = parameters.AxisViscous;
        _dry = parameters.AxisCoulomb;
        _opposing = Enumerable.Range(0, Places + 1).Select(i => plan.SlewSeconds * i / Places).Max(time => -direction * load.Outside(own.Position(time), time));
    }

    /// <summary>The torque at a rate of the axis, N m.</summary>
    public double Torque(double rateRadiansPerSecond) => Math.Max(0.0, _dry + (_viscous * rateRadiansPerSecond) + _opposing);

    /// <summary>Friction alone at rest, N m.</summary>
    public double Friction => _dry;
}
