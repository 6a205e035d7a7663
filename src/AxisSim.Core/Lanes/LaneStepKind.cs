namespace AxisSim.Core.Lanes;

/// <summary>What all lanes of a team have in common in one step.</summary>
/// <param name="Split">Whether the command changes inside the step, in any lane.</param>
/// <param name="FirstLevel">Which of the currents holds at first: an index from <see cref="LaneParameters.SlewMicrostepping"/> on.</param>
/// <param name="SecondLevel">Which holds after the change.</param>
/// <param name="Pushed">Whether the planned rate or the sync probe pushes the rotor, in any lane.</param>
/// <param name="Mixed">Whether it changes in some lanes only.</param>
internal readonly record struct LaneStepKind(bool Split, int FirstLevel, int SecondLevel, bool Pushed, bool Mixed = false)
{
    /// <summary>Index of <see cref="LaneParameters.Unity"/>, for commands that hold amperes.</summary>
    public const int Unity = 4;
}
