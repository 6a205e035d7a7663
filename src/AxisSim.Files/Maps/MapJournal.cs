using System.Diagnostics;
using AxisSim.Core.Maps;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Files.Maps;

/// <summary>Keeps each cell of a map as it is done, so that a run that is stopped or killed can be taken up again.</summary>
/// <remarks>Records go to the system within moments, and to the disk every few seconds and at the end. After the first failure nothing more is written.</remarks>
internal sealed class MapJournal : IDisposable
{
    /// <summary>Name of the file in its folder.</summary>
    public const string FileName = "map.journal";

    private const int BufferBytes = 1024;
    private static readonly TimeSpan HandOver = TimeSpan.FromSeconds(0.2);
    private static readonly TimeSpan ToDisk = TimeSpan.FromSeconds(3.0);

    private readonly string path;
    private readonly Stream stream;
    private readonly Lock gate = new();
    private readonly MemoryStream waiting = new(2 * BufferBytes);
    private readonly Stopwatch sinceHandOver = Stopwatch.StartNew();
    private readonly Stopwatch sinceDisk = Stopwatch.StartNew();
    private bool closed;

    /// <summary>Goes on at the end of a stream.</summary>
    internal MapJournal(string path, Stream stream) => (this.path, this.stream) = (path, stream);

    /// <summary>What went wrong in writing; null so far so good.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>Called once when writing fails.</summary>
    public Action? Failed { get; init; }

    /// <summary>Begins a journal.</summary>
    public static MapJournal? Create(string path, MapHeader header, Action failed, out Problem? problem)
    {
        byte[] record = JournalFrame.Header(header);
        problem = AtomicFile.Write(path, stream =>
        {
            stream.Write(JournalFrame.Magic);
            stream.Write(record);
        });
        return problem is null ? Open(path, JournalFrame.Magic.Length + record.Length, failed, out problem) : null;
    }

    /// <summary>Opens a journal behind its last whole record; what is torn after it is cut off.</summary>
    public static MapJournal? Open(string path, long goodBytes, Action failed, out Problem? problem)
    {
        problem = null;
        FileStream? stream = null;
        try
        {
            // Nobody else may write: two runs in one folder would tear each other's records.
            stream = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
            stream.SetLength(goodBytes);
            stream.Position = goodBytes;
            var journal = new MapJournal(path, stream) { Failed = failed };
            stream = null;
            return journal;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            problem = new Problem(path, 0, 0, "", "a journal that cannot be written, or that another run is writing: " + error.Message.TrimEnd('.'), "a folder for one run at a time", "another folder, or wait for the other run");
            return null;
        }
        finally
        {
            stream?.Dispose();
        }
    }

    /// <summary>Adds a cell.</summary>
    public void Add(int place, in CellResult result) => Append(JournalFrame.Cell(place, result));

    /// <summary>Adds why a cell is not valid.</summary>
    public void Add(int place, string message) => Append(JournalFrame.Message(place, message));

    /// <summary>Brings all to the disk; whether everything is there.</summary>
    public bool Flush()
    {
        lock (gate)
        {
            Try(() =>
            {
                Pass();
                ToTheDisk();
            });
            return Problem is null;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            if (!closed)
            {
                Flush();
                closed = true;
                stream.Dispose();
                waiting.Dispose();
            }
        }
    }

    private void Append(byte[] record)
    {
        lock (gate)
        {
            Try(() =>
            {
                waiting.Write(record);
                if (waiting.Length >= BufferBytes || sinceHandOver.Elapsed > HandOver)
                {
                    Pass();
                }

                if (sinceDisk.Elapsed > ToDisk)
                {
                    Pass();
                    ToTheDisk();
                }
            });
        }
    }

    private void Try(Action write)
    {
        if (closed || Problem is not null)
        {
            return;
        }

        try
        {
            write();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            // The runtime reports a limit on the size of files as an argument out of range.
            string why = error is ArgumentOutOfRangeException ? "a limit on the size of files" : AtomicFile.Why(error);
            Problem = new Problem(path, 0, 0, "", why, "a disk with room for the journal, some 40 bytes a cell", "room on the disk, then the same command with --resume; what is done so far is kept");
            Failed?.Invoke();
        }
    }

    private void Pass()
    {
        stream.Write(waiting.GetBuffer().AsSpan(0, (int)waiting.Length));
        waiting.SetLength(0);
        sinceHandOver.Restart();
    }

    private void ToTheDisk()
    {
        if (stream is FileStream file)
        {
            file.Flush(flushToDisk: true);
        }

        sinceDisk.Restart();
    }
}
