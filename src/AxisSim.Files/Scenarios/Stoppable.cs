namespace AxisSim.Files.Scenarios;

/// <summary>Waits for what may never come, and can be told to give up.</summary>
/// <remarks>The system cannot be told to give up opening a pipe that nobody writes to, or a file on a server that is gone; so a thread of the pool is left behind with it.</remarks>
internal static class Stoppable
{
    /// <summary>What the work gives.</summary>
    /// <exception cref="OperationCanceledException">The waiting was ended.</exception>
    public static T Wait<T>(Func<T> work, CancellationToken stop)
    {
        if (!stop.CanBeCanceled)
        {
            return work();
        }

        Task<T> task = Task.Run(work, stop);
        Task.WaitAny([task], stop);
        return task.GetAwaiter().GetResult();
    }
}
