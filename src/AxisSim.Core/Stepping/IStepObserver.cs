using AxisSim.Core.Drives;

namespace AxisSim.Core.Stepping;

/// <summary>Sees each step after it was taken; structs, compiled into the loop.</summary>
internal interface IStepObserver
{
    /// <summary>False when nothing is wanted, so that steps are taken by the block.</summary>
    static abstract bool Wants { get; }

    void See(in StepContext step, MoveRun run);
}

/// <summary>Looks at nothing.</summary>
internal readonly struct NoObserver : IStepObserver
{
    public static bool Wants => false;

    public void See(in StepContext step, MoveRun run)
    {
    }
}
