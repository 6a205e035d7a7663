using AxisSim.Cli.Text;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Finds out what a folder holds of a map before it is computed.</summary>
internal static class JournalFolder
{
    /// <summary>The journal to go on with; null when there is none yet. Problems are added when it must not be touched.</summary>
    public static JournalContent? Look(string folder, MapHeader header, bool resume, List<Problem> problems, CancellationToken stop)
    {
        string path = Path.Combine(folder, MapJournal.FileName);
        if (!File.Exists(path))
        {
            return null;
        }

        if (JournalContent.Read(path, stop, out Problem? unreadable) is not { } journal)
        {
            problems.Add(unreadable!);
            return null;
        }

        IReadOnlyList<string> differences = header.DifferencesFrom(journal.Header, withShard: true);
        if (differences.Count > 0)
        {
            problems.Add(new Problem(path, 0, 0, "", $"the journal of another map: {string.Join("; ", differences)}", "a folder of its own for each map", "--out with another folder, or the options of that map with --resume"));
            return null;
        }

        if (!resume)
        {
            problems.Add(new Problem(path, 0, 0, "", $"the journal of this very map, with {Say.Many(journal.Cells.ComputedCount(), "cell")} done, which is kept", "a folder without a journal", "--resume to go on from there, or --out with another folder"));
            return null;
        }

        return journal;
    }
}
