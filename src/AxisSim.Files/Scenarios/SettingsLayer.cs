using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Reads a settings file as values to lay over a scenario, and says what is wrong with it by its own lines.</summary>
internal static class SettingsLayer
{
    /// <summary>The values in their order; problems are added to those of the document.</summary>
    public static IReadOnlyList<Entry> Read(SettingsFile file, ScenarioDocument onto)
    {
        ScenarioDocument layer = TomlText.Parse(file.Text, file.Name);
        if (!layer.Problems.HasErrors && Unfit(file, layer) is { } unfit)
        {
            onto.Problems.Add(unfit);
            return [];
        }

        if (!layer.SectionsBroken)
        {
            new UnknownKeys(layer).Report();
        }

        foreach (Problem problem in layer.Problems.Sorted())
        {
            onto.Problems.Add(problem);
        }

        foreach ((string list, List<string> names) in layer.Items)
        {
            foreach (string item in names)
            {
                onto.Offered[$"{list}.{item}"] = new OfferedItem(file.Name, layer.Sections[$"{list}.{item}"], IsWhole(layer, $"{list}.{item}"));
            }
        }

        return layer.SectionsBroken ? [] : [.. layer.Entries.Values.Where(entry => ScenarioKeys.Find(entry.Path) is not null)];
    }

    // Whole or empty, it is not what was meant; laid over all the same it would mix two mounts, or do nothing.
    private static Problem? Unfit(SettingsFile file, ScenarioDocument layer)
    {
        const string Allowed = "some keys and values of a scenario, in the form of a scenario";
        if (layer.Entries.Count == 0)
        {
            return new Problem(file.Name, 0, 0, "", "nothing to lay over the scenario", Allowed, "for example [polar.motion] and below it ramp_time = \"2 s\"");
        }

        // Asked of a copy, for what is missing is no problem here.
        ScenarioDocument alone = TomlText.Parse(file.Text, file.Name);
        LikeAxis.Expand(alone);
        MissingKeys.Report(alone, []);
        return alone.Problems.HasErrors ? null
            : new Problem(file.Name, 0, 0, "", "a whole scenario, not settings to lay over one", Allowed, $"{file.Name} as FILE, without --settings; or only the keys that are to change");
    }

    private static bool IsWhole(ScenarioDocument layer, string item) =>
        ScenarioKeys.RequiredOf(item).All(key => layer.Entries.ContainsKey($"{item}.{key.Name}"));
}
