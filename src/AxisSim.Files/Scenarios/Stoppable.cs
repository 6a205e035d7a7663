namespace AxisSim.Files.Scenarios;

/// <summary>Reads what may never come, and can be told to give up.</summary>
/// <remarks>The system cannot be told to give up opening a pipe that nobody writes to; so a thread of the pool is left behind with it.</remarks>
internal static class Stoppable
{
    /// <summary>What reading a file gives.</summary>
    /// <param name="path">File.</param>
    /// <param name="read">Reads it.</param>
    /// <param name="stop">Ends the waiting for a pipe or a device; a file on a disk is there or is not.</param>
    /// <exception cref="OperationCanceledException">The waiting was ended.</exception>
    public static T Wait<T>(string path, Func<T> read, CancellationToken stop)
    {
        if (!stop.CanBeCanceled || HasContent(path))
        {
            return read();
        }

        Task<T> task = Task.Run(read, stop);
        Task.WaitAny([task], stop);
        return task.GetAwaiter().GetResult();
    }

    // Pipes and devices have no length.
    private static bool HasContent(string path)
    {
        try
        {
            return new FileInfo(path) is { Exists: true, Length: > 0 };
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException or System.Security.SecurityException)
        {
            // Reading it will say why, in words.
            return false;
        }
    }
}
