using System.Globalization;
using AxisSim.Core.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>A map put together from the journals of its parts.</summary>
internal sealed class PartsOfMap
{
    private PartsOfMap(MapHeader header, MapCells cells) => (Header, Cells) = (header, cells);

    /// <summary>What the map is of: that of part 1, in whatever order the parts come, as a whole.</summary>
    public MapHeader Header { get; private set; }

    /// <summary>All cells.</summary>
    public MapCells Cells { get; }

    /// <summary>The first cell that is not valid.</summary>
    public FirstMessage Invalid { get; } = new();

    /// <summary>Joins the parts in these folders; null when they do not make one whole map, and all problems are added.</summary>
    public static PartsOfMap? Read(IReadOnlyList<string> folders, List<Problem> problems, CancellationToken stop)
    {
        int before = problems.Count;
        PartsOfMap? whole = null;
        MapHeader? first = null;
        var seen = new SortedDictionary<int, string>();
        foreach (string folder in folders)
        {
            string path = Path.Combine(folder, MapJournal.FileName);
            if (!File.Exists(path))
            {
                problems.Add(About(folder, Directory.Exists(folder) ? "a folder without a journal of a map" : "no such folder", "the folder of a part, as axissim map --shard I/N --out DIR wrote it", ""));
                continue;
            }

            if (JournalContent.Read(path, stop, out Problem? unreadable) is not { } part)
            {
                problems.Add(unreadable!);
                continue;
            }

            first ??= part.Header;
            whole ??= new PartsOfMap(first, first.NewCells());
            if (Belongs(folder, part, first, seen, problems))
            {
                whole.Take(part);
            }
        }

        // One part at a time is in memory, besides the whole.
        int[] missing = first is null ? [] : [.. Enumerable.Range(1, first.ShardCount).Where(index => !seen.ContainsKey(index))];
        if (missing.Length > 0 && problems.Count == before)
        {
            problems.Add(About("merge", $"no part {Numbers(missing)} of {Numbers([first!.ShardCount])}", "the folders of all parts", "the missing folders too"));
        }

        return problems.Count == before ? whole : null;
    }

    private static bool Belongs(string folder, JournalContent part, MapHeader first, SortedDictionary<int, string> seen, List<Problem> problems)
    {
        MapHeader header = part.Header;
        IReadOnlyList<string> differences = first.DifferencesFrom(header, withShard: false);
        if (differences.Count > 0 || header.ShardCount != first.ShardCount)
        {
            string what = differences.Count > 0 ? string.Join("; ", differences) : $"part {header.Shard}, where the first is {first.Shard}";
            problems.Add(About(folder, $"a part of another map: {what}", "parts of one map: the same scenario, settings and options", ""));
            return false;
        }

        if (!header.Full)
        {
            problems.Add(About(folder, "a map of the adaptive grid, which is whole by itself", "parts that axissim map --full --shard I/N wrote", ""));
            return false;
        }

        if (seen.TryGetValue(header.ShardIndex, out string? other))
        {
            problems.Add(About(folder, $"part {header.Shard}, which {other} is already", "each part once", ""));
            return false;
        }

        seen.Add(header.ShardIndex, folder);
        if (!MapStudy.IsWhole(part.Cells, header.ShardIndex - 1, header.ShardCount) || (header.HasOwnPoint && !part.Cells.IsComputed(part.Cells.OwnPlace)))
        {
            problems.Add(About(folder, $"part {header.Shard} with {part.Cells.ComputedCount().ToString(CultureInfo.InvariantCulture)} cells done and more to do", "parts that are done", "the command of that part again with --resume"));
            return false;
        }

        return true;
    }

    private void Take(JournalContent part)
    {
        if (part.Header.ShardIndex == 1)
        {
            Header = part.Header with { ShardCount = 1 };
        }

        for (int place = 0; place <= Cells.OwnPlace; place++)
        {
            if (part.Cells.IsComputed(place))
            {
                Cells.Set(place, part.Cells[place]);
            }
        }

        if (part.Invalid.Text is { } text)
        {
            Invalid.Take(part.Invalid.Place, text);
        }
    }

    private static string Numbers(int[] numbers) => string.Join(", ", numbers.Select(number => number.ToString(CultureInfo.InvariantCulture)));

    private static Problem About(string place, string found, string allowed, string fix) => new(place, 0, 0, "", found, allowed, fix);
}
