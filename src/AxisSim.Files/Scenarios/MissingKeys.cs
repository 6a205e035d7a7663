using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Reports required keys that are not there, in the sections that are in use.</summary>
internal static class MissingKeys
{
    private static readonly string[] AxisSections = ["motor", "drive", "worm", "axis", "motion"];
    private static readonly string[] OptionalAxisSections = ["clutch", "flexible", "load"];

    /// <summary>Reports all of them, except what another message suggests already.</summary>
    public static void Report(ScenarioDocument document, HashSet<string> suggested)
    {
        foreach (string section in InUse(document).Where(section => !suggested.Contains(section)))
        {
            if (document.Problems.IsFull)
            {
                return;
            }

            string pattern = section.Length == 0 ? "" : ScenarioKeys.Pattern(section + ".x")[..^2];
            List<ScenarioKey> missing = [.. ScenarioKeys.InSection(pattern).Where(key => key.Required)
                .Where(key => !document.Entries.ContainsKey(PathIn(section, key)) && !suggested.Contains(PathIn(section, key)))];
            if (document.IsLike && section.StartsWith("declination.", StringComparison.Ordinal) && IsInUse(document, "polar", section["declination.".Length..]))
            {
                // What the polar axis lacks too is told there; of a section that it does without, here.
                missing.RemoveAll(key => !document.Entries.ContainsKey("polar" + PathIn(section, key)["declination".Length..]));
            }

            if (pattern.EndsWith("<name>", StringComparison.Ordinal))
            {
                // Items without a name have been reported where they stand.
                missing.RemoveAll(key => key.Name == "name");
            }

            bool whole = section.Length > 0 && missing.Count > 1 && !document.Mentions(section);
            if (whole)
            {
                document.Problems.Error(default, section, $"no section [{section}]", "a section with at least " + string.Join(", ", missing.Select(key => key.Name)), $"for example [{section}] " + string.Join(", ", missing.Select(key => $"{key.Name} = {key.Example}")));
                continue;
            }

            Spot spot = document.Sections.TryGetValue(section, out Spot at) ? at : default;
            foreach (ScenarioKey key in missing)
            {
                string under = spot.Line == 0 && section.Length > 0 ? $" under [{section}]" : "";
                document.Problems.Error(spot, PathIn(section, key), "nothing (this key is required)", key.Allowed, $"for example {key.Name} = {key.Example}{under}");
            }
        }
    }

    private static string PathIn(string section, ScenarioKey key) => section.Length == 0 ? key.Name : $"{section}.{key.Name}";

    private static bool IsInUse(ScenarioDocument document, string axis, string section) => !OptionalAxisSections.Contains(section) || document.Mentions($"{axis}.{section}");

    private static IEnumerable<string> InUse(ScenarioDocument document)
    {
        yield return "";
        yield return "site";
        foreach (string axis in ScenarioKeys.Axes.Where(axis => LikeAxis.Has(document, axis)))
        {
            foreach (string section in AxisSections.Concat(OptionalAxisSections.Where(name => IsInUse(document, axis, name))))
            {
                yield return $"{axis}.{section}";
            }

            foreach (string item in document.ItemsOf($"{axis}.stages"))
            {
                yield return $"{axis}.stages.{item}";
            }
        }

        foreach (string item in document.ItemsOf("payload"))
        {
            yield return $"payload.{item}";
        }

        foreach (string item in document.ItemsOf(ControllerKeys.List))
        {
            yield return $"{ControllerKeys.List}.{item}";
        }

        if (document.Mentions("counterweight"))
        {
            yield return "counterweight";
        }

        yield return "settling";
    }
}
