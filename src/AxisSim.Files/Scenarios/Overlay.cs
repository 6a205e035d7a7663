using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Lays values over those of a document. Each replaces the value of its key and what it is an alternative to.</summary>
internal static class Overlay
{
    /// <summary>Without the values of an axis that the document does not have, which are reported.</summary>
    public static IReadOnlyList<Entry> OfAxesThere(ScenarioDocument document, IReadOnlyList<Entry> laid)
    {
        string[] there = [.. ScenarioKeys.Axes.Where(document.Mentions)];
        if (document.SectionsBroken || there.Length != 1 || laid.Any(entry => entry.Path == "declination.like"))
        {
            return laid;
        }

        string has = there[0], lacks = ScenarioKeys.Axes.Single(axis => axis != has);
        Entry[] lost = [.. laid.Where(entry => entry.Path.StartsWith(lacks + ".", StringComparison.Ordinal))];
        foreach (Entry first in lost.Where(entry => ScenarioKeys.Find(entry.Path) is not null).GroupBy(entry => entry.File).Select(file => file.First()))
        {
            string path = has + first.Path[lacks.Length..], name = path[(path.LastIndexOf('.') + 1)..];
            bool typed = first.Kind == EntryKind.Setting;
            string fix = typed ? $"{SettingsReader.Source} \"{path}={first.Text}\"" : $"{name} = {first.Shown} under [{path[..^(name.Length + 1)]}]";
            document.Problems.Error(first, $"{first.Shown} for the {lacks} axis, which this scenario does not have", $"settings of the {has} axis, the only one here", $"{fix}, if it is meant for that axis");
        }

        return lost.Length == 0 ? laid : [.. laid.Except(lost)];
    }

    /// <summary>Puts values into the document.</summary>
    public static void Apply(ScenarioDocument document, IEnumerable<Entry> laid)
    {
        foreach (Entry setting in laid)
        {
            if (!ItemIsThere(document, setting))
            {
                continue;
            }

            foreach (string other in Alternatives.Of(setting.Path))
            {
                // Two that come together contradict each other; the checks say so.
                if (document.Entries.TryGetValue(other, out Entry? entry) && (entry.Copied || entry.File != setting.File))
                {
                    document.Entries.Remove(other);
                }
            }

            document.Entries[setting.Path] = setting;
        }
    }

    private static bool ItemIsThere(ScenarioDocument document, Entry setting)
    {
        string? list = Array.Find(ScenarioKeys.Lists, name => setting.Path.StartsWith(name + ".", StringComparison.Ordinal));
        if (list is null)
        {
            return true;
        }

        string item = setting.Path[(list.Length + 1)..].Split('.')[0];
        IReadOnlyList<string> items = document.ItemsOf(list);
        if (items.Contains(item))
        {
            return true;
        }

        string known = items.Count == 0 ? $"the list {list} has no items in this scenario" : $"items of {list}: {string.Join(", ", items)}";
        string? near = NearestName.Of(item, items);
        if (setting.Kind == EntryKind.Setting)
        {
            string fix = near is null ? "" : $"--set {list}.{near}{setting.Path[(list.Length + 1 + item.Length)..]}={setting.Shown}";
            document.Problems.Error(setting, $"an item \"{item}\" that is not there", known, fix);
            return false;
        }

        OfferedItem offered = document.Offered[$"{list}.{item}"];
        if (!offered.Whole)
        {
            string needed = string.Join(", ", ScenarioKeys.RequiredOf($"{list}.{item}").Select(key => key.Name));
            document.Problems.Add(new Problem(
                offered.File, offered.Spot.Line, offered.Spot.Column, $"{list}.{item}", $"an item \"{item}\" that is not there{(near is null ? "" : $" (did you mean {near}?)")}", $"{known}; or a new one with at least {needed}", near is null ? "" : $"name = \"{near}\""));
            return false;
        }

        if (!document.Items.TryGetValue(list, out List<string>? names))
        {
            document.Items[list] = names = [];
        }

        names.Add(item);
        return true;
    }
}
