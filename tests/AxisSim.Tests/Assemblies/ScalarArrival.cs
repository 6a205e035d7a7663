using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Tests.Assemblies;

/// <summary>The short question, does this axis arrive?, asked of one run alone: what batches must agree with.</summary>
internal static class ScalarArrival
{
    public static bool Of(MountSetup setup, MountAxis axis, double stepSeconds, double loadFactor = 1.0)
    {
        MountSetup loaded = setup.Loaded(axis, loadFactor);
        var plan = new MovePlan(loaded);
        var run = new MoveRun(loaded, axis, plan, stepSeconds);
        var none = new NoObserver();
        return run.RunTo(plan.SlewSeconds + Core.Batches.LaneCase.BeyondSeconds, ref none, stopWhenLost: true);
    }
}
