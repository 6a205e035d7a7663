using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Files.Scenarios;

/// <summary>Whether an axis can be stepped at all: figures may be good one by one and together give a motion too fast for any step.</summary>
internal static class StepChecks
{
    /// <summary>Reports each axis that cannot.</summary>
    public static void Report(MountSetup setup, ScenarioDocument document)
    {
        foreach (MountAxis axis in Enum.GetValues<MountAxis>())
        {
            if ((axis == MountAxis.Polar ? setup.Polar : setup.Declination) is null)
            {
                continue;
            }

            StepChoice choice = StepChoice.For(setup, axis, StepChoice.DefaultSeconds);
            if (!choice.Workable)
            {
                string key = axis == MountAxis.Polar ? "polar" : "declination";
                document.Problems.Error(
                    new Spot(0, 0),
                    key,
                    $"figures that swing or decay too fast for the shortest step: {choice.Reason}",
                    "an axis whose fastest motion a step of 0.1 us can follow",
                    "figures of a real motor and train: look at rotor_inertia, viscous, damping, the inertias of stages and worm, and stiffness");
            }
        }
    }
}
