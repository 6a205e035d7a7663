using AxisSim.Core.Drives;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Vectors of axes that are stepped together; one implementation for each width of the machine's registers.</summary>
/// <remarks>A lane is addressed by its number; lanes of one vector are neighbours.</remarks>
internal interface ILaneEngine
{
    /// <summary>Lanes in a vector.</summary>
    int Width { get; }

    void Put(int lane, in LaneParameters parameters, in LaneState state);

    LaneState State(int lane);

    /// <summary>Copies a lane with its constants.</summary>
    void Copy(int from, int to);

    /// <summary>Sets the commands of a block for all lanes, and the decays of the steps that are split if these are the same in all.</summary>
    void Commands(ReadOnlySpan<LaneCommand> commands, ReadOnlySpan<LaneSplitDecays> decays, ReadOnlySpan<LaneStepKind> kinds, bool withDecays);

    /// <summary>Sets the command of one step for one lane; for teams that do not share one.</summary>
    void Command(int step, int lane, in LaneCommand command);

    /// <summary>Sets the disturbances of the block for all lanes.</summary>
    void Disturbance(in LaneDisturbance disturbance);

    /// <summary>Sets it for one lane: what it holds for the end is what the next block of <see cref="Disturbances"/> begins with.</summary>
    void Disturbance(int lane, in LaneDisturbance disturbance);

    /// <summary>Sets what the disturbances of a lane follow from.</summary>
    void OtherAxis(int lane, in LaneOtherAxis other);

    /// <summary>Takes the disturbances of vectors on by a block.</summary>
    /// <param name="vectors">Vectors in use.</param>
    /// <param name="terms">Slow terms.</param>
    /// <param name="from">Start of the block, s.</param>
    /// <param name="to">Its end, s.</param>
    /// <param name="winds">Torque of the wind at its end, N m: one for all, or one for each lane.</param>
    void Disturbances(int vectors, in LaneTerms terms, double from, double to, ReadOnlySpan<double> winds);

    /// <summary>Sets the planned angle at the end of the block, full steps, for all lanes.</summary>
    void End(double fullSteps);

    /// <summary>Sets it for one lane.</summary>
    void End(int lane, double fullSteps);

    /// <summary>Sets what a lane follows from now on, with its table of microsteps.</summary>
    void Plan(int lane, in LanePlan plan, MicrostepRow[] table);

    /// <summary>Sets the commands of a block, and the planned angle at its end, for the lanes of one vector by their plans; for blocks in which these stay as they are.</summary>
    void Drive(int vector, in LaneTimes times, Span<LaneStepKind> kinds);

    /// <summary>Steps all vectors through a block.</summary>
    /// <param name="vectors">Vectors in use.</param>
    /// <param name="kinds">What each step is; for each vector in turn where commands are not shared.</param>
    /// <param name="job">What is the same in all blocks.</param>
    /// <param name="signs">What came of each vector.</param>
    /// <param name="record">Takes the pointing (<see cref="LaneBlock.Pointing"/>) of every lane after every step, lane by lane; empty when nobody looks.</param>
    void Block(int vectors, ReadOnlySpan<LaneStepKind> kinds, in LaneJob job, Span<LaneSign> signs, Span<double> record);
}
