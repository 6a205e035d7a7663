using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Outcomes;

/// <summary>The short question: does this axis arrive? Stops as soon as sync or the clutch's grip is lost.</summary>
internal static class Arrival
{
    /// <summary>Time watched beyond the slew, s: a rotor that goes through the target has shown it by then.</summary>
    public const double BeyondSeconds = 0.3;

    public static bool Of(MountSetup setup, MountAxis axis, double stepSeconds)
    {
        var plan = new MovePlan(setup);
        var run = new MoveRun(setup, axis, plan, stepSeconds);
        var none = new NoObserver();
        return run.RunTo(plan.SlewSeconds + BeyondSeconds, ref none, stopWhenLost: true);
    }

    /// <summary>The same with inertia, imbalance and friction of the axis times a factor.</summary>
    public static bool Of(MountSetup setup, MountAxis axis, double stepSeconds, double loadFactor) =>
        Of(Loaded(setup, axis, loadFactor), axis, stepSeconds);

    public static MountSetup Loaded(MountSetup setup, MountAxis axis, double factor)
    {
        AxisModel model = setup.Axis(axis);
        AxisBearings bearings = model.Bearings;
        return (setup with { Load = setup.Load.Scaled(factor, factor) }).With(axis, model with
        {
            Bearings = new AxisBearings
            {
                CoulombNewtonMetres = bearings.CoulombNewtonMetres * factor,
                BreakawayNewtonMetres = bearings.BreakawayNewtonMetres * factor,
                ViscousNewtonMetreSecondsPerRadian = bearings.ViscousNewtonMetreSecondsPerRadian * factor,
            },
        });
    }
}
