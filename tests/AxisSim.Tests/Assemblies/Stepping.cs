using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;

namespace AxisSim.Tests.Assemblies;

/// <summary>Steps a dynamics through time along a planned shaft angle.</summary>
internal static class Stepping
{
    public delegate void Look<TMotor, TLoad>(double seconds, ref AxisDynamics<TMotor, TLoad> dynamics)
        where TMotor : struct, IMotorLaw
        where TLoad : struct, ILoadLaw;

    public static void Run<TMotor, TLoad>(ref AxisDynamics<TMotor, TLoad> dynamics, double step, double until, Func<double, double>? plan = null, Look<TMotor, TLoad>? after = null)
        where TMotor : struct, IMotorLaw
        where TLoad : struct, ILoadLaw
    {
        plan ??= _ => 0.0;
        long steps = (long)Math.Round(until / step);
        for (long i = 0; i < steps; i++)
        {
            dynamics.Step(new StepContext(i * step, step, plan(i * step), plan((i + 1) * step)));
            after?.Invoke((i + 1) * step, ref dynamics);
        }
    }
}
