using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Output;

/// <summary>Writes the files of one run into a folder, each whole or not at all.</summary>
internal sealed class OutputFolder(string folder, CancellationToken stop)
{
    /// <summary>Files written, as paths that the user can open.</summary>
    public List<string> Written { get; } = [];

    /// <summary>The first thing that went wrong; null so far so good.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>Whether the folder can be written, found out before the long work; null when it can.</summary>
    public Problem? Probe()
    {
        string probe = Path.Combine(folder, $".axissim-{Guid.NewGuid():N}");
        Problem? problem = AtomicFile.Write(probe, _ => { });
        if (problem is null)
        {
            File.Delete(probe);
            return null;
        }

        return problem with { File = "--out", Found = $"\"{folder}\" ({problem.Found})", Allowed = "a folder that can be written", Fix = "--out with another folder" };
    }

    /// <summary>Writes a file; after a failure, or when the user asks to stop, no further one is begun.</summary>
    public void Write(string name, Action<Stream> write)
    {
        stop.ThrowIfCancellationRequested();
        if (Problem is not null)
        {
            return;
        }

        string path = Path.Combine(folder, name);
        Problem = AtomicFile.Write(path, write);
        if (Problem is null)
        {
            Written.Add(path);
        }
    }
}
