using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

/// <summary>One axis of a setup made ready to be stepped: its plan, its constants, and what it starts from.</summary>
internal sealed class LaneAxis
{
    private readonly MountSetup _setup;
    private readonly MountAxis _axis;

    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="plan">The plan of both axes.</param>
    /// <param name="stepSeconds">Step asked for, s.</param>
    /// <param name="asAsked">Takes that step whatever speed and modes want.</param>
    public LaneAxis(MountSetup setup, MountAxis axis, MovePlan plan, double stepSeconds, bool asAsked = false)
    {
        (_setup, _axis, Plan) = (setup, axis, plan);
        AxisModel model = setup.Axis(axis);
        ShaftPlan = plan.For(axis, setup.Move, model.Train.TotalRatio);
        Mechanics = AxisAssembly.Parameters(setup, axis);
        Choice = asAsked ? new StepChoice(stepSeconds, null) : StepChoice.For(stepSeconds, model, Mechanics, ShaftPlan);
        Features = LaneSetup.Features(setup, axis, Mechanics);
        Terms = LaneSetup.Terms(setup, axis);
        Parameters = LaneSetup.Parameters(setup, axis, Mechanics, Choice.StepSeconds);
        Start = LaneSetup.Start(setup, axis, plan, ShaftPlan, Mechanics, Parameters);
    }

    public MovePlan Plan { get; }

    /// <summary>Plan of the motor's shaft.</summary>
    public MotorPlan ShaftPlan { get; }

    /// <summary>Constants of the mechanics, SI.</summary>
    public AxisParameters Mechanics { get; }

    public StepChoice Choice { get; }

    public LaneFeatures Features { get; }

    public LaneTerms Terms { get; }

    public LaneParameters Parameters { get; }

    public LaneState Start { get; }

    /// <summary>The drive's commands from the start on.</summary>
    public LaneCommands Commands() => new(_setup.Axis(_axis), ShaftPlan, _setup.Disturbances.SyncProbe, Choice.StepSeconds);

    /// <summary>The disturbances from the start on.</summary>
    public LaneDisturbances Disturbances() => new(_setup, _axis, Plan);
}
