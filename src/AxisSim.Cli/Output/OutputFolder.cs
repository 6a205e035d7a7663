using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Output;

/// <summary>Writes the files of one run into a folder, each whole or not at all.</summary>
internal sealed class OutputFolder(string folder, Host host)
{
    /// <summary>The first thing that went wrong; null so far so good.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>
    /// The folder that was asked for, null when none was; a problem is added when it cannot be written, which is found out before the long work. It is made with
    /// the first file in it.
    /// </summary>
    public static OutputFolder? Open(string? path, Host host, List<Problem> problems)
    {
        if (path is null)
        {
            return null;
        }

        var opened = new OutputFolder(path, host);
        if (opened.Probe() is { } unwritable)
        {
            problems.Add(unwritable);
        }

        return opened;
    }

    /// <summary>What stands against writing here; null when nothing does.</summary>
    private Problem? Probe()
    {
        if (string.IsNullOrWhiteSpace(folder))
        {
            return About("\"\", no name of a folder");
        }

        if (PlainText.FirstStrange(folder) is { } strange)
        {
            return About($"\"{folder}\" ({strange})");
        }

        return AtomicFile.Try(Path.Combine(folder, ".axissim-probe")) is { } problem ? About($"\"{folder}\": {problem.Found}") : null;
    }

    /// <summary>Writes a file; after a failure, or when the user asks to stop, no further one is begun.</summary>
    public void Write(string name, Action<Stream> write)
    {
        host.Stop.ThrowIfCancellationRequested();
        if (Problem is not null)
        {
            return;
        }

        string path = Path.Combine(folder, name);
        Problem = AtomicFile.Write(path, stream => write(new StoppableStream(stream, host.Stop)));
        if (Problem is null)
        {
            host.Written.Add(path);
        }
    }

    /// <summary>Takes away what an earlier run wrote under a name; a failure shows when the file is written anew.</summary>
    public void Remove(string name)
    {
        host.Stop.ThrowIfCancellationRequested();
        Delete(name);
    }

    /// <summary>The same, also when the user has asked to stop.</summary>
    public void Delete(string name)
    {
        try
        {
            File.Delete(Path.Combine(folder, name));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Writing it will say why, in words.
        }
    }

    private static Problem About(string found) => new("--out", 0, 0, "", found, "a folder that can be written", "--out results, or another folder");
}
