namespace AxisSim.Core.Stepping.Jobs;

/// <summary>What all lanes of a vector have in common in one step.</summary>
internal readonly record struct LaneStepKind
{
    private const int SplitBit = 1 << 8;
    private const int PushedBit = 1 << 9;
    private const int MixedBit = 1 << 10;

    // One number, for it is written and compared in every step.
    private readonly int _bits;

    /// <param name="split">Whether the command changes inside the step, in any lane.</param>
    /// <param name="firstLevel">Which of the currents holds at first.</param>
    /// <param name="secondLevel">Which holds after the change.</param>
    /// <param name="pushed">Whether the planned rate or the sync probe pushes the rotor, in any lane.</param>
    /// <param name="mixed">Whether the command may change in some lanes only.</param>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public LaneStepKind(bool split, LaneLevel firstLevel, LaneLevel secondLevel, bool pushed, bool mixed = false) =>
        _bits = (int)firstLevel | ((int)secondLevel << 4) | (split ? SplitBit : 0) | (pushed ? PushedBit : 0) | (mixed ? MixedBit : 0);

    public bool Split => (_bits & SplitBit) != 0;

    public bool Pushed => (_bits & PushedBit) != 0;

    public bool Mixed => (_bits & MixedBit) != 0;

    public LaneLevel FirstLevel => (LaneLevel)(_bits & 15);

    public LaneLevel SecondLevel => (LaneLevel)((_bits >> 4) & 15);
}
