using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks across the keys of payload, counterweight and lumped loads.</summary>
internal static class LoadChecks
{
    /// <summary>Reports all of them.</summary>
    public static void Report(ValueSet values, IReadOnlyList<string> axes, HashSet<string> suggested)
    {
        IReadOnlyList<string> bodies = values.Document.ItemsOf("payload");
        foreach (string axis in axes)
        {
            string section = $"{axis}.load";
            bool lumped = values.Document.Mentions(section);
            Spot spot = values.Document.Sections.TryGetValue(section, out Spot at) ? at : default;
            if (bodies.Count > 0 && lumped)
            {
                values.Problems.Error(spot, section, "a lumped load besides [[payload]]", "bodies under [[payload]], or lumped loads, not both", "one of the two");
            }
            else if (bodies.Count == 0 && !lumped && !suggested.Contains(section) && !suggested.Contains("payload"))
            {
                values.Problems.Error(default, section, "no load", "bodies under [[payload]], or a lumped load of each axis", $"[{section}] with inertia and imbalance, or [[payload]]");
            }
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (string body in bodies)
        {
            CheckName(values, $"payload.{body}.name", names);
            CheckShape(values, $"payload.{body}", suggested);
        }

        CheckCounterweight(values, bodies.Count);
    }

    /// <summary>Names may be set anew by a setting; they must stay plain and different.</summary>
    public static void CheckName(ValueSet values, string path, HashSet<string> names)
    {
        if (values.Given(path) is not { } name || (ItemNames.IsPlain(name.Text) && names.Add(name.Text)) || values.EntryOf(path).Kind != EntryKind.Setting)
        {
            return;
        }

        Entry entry = values.EntryOf(path);
        values.Problems.Error(entry, entry.Shown, "a name of its own: letters, digits, - and _", "another name");
    }

    private static void CheckShape(ValueSet values, string body, HashSet<string> suggested)
    {
        string shape = values.Text($"{body}.shape");
        string[] needed = shape switch
        {
            "tube" => ["length", "diameter", "inner_diameter"],
            "cylinder" => ["length", "diameter"],
            "box" => ["length", "width", "height"],
            _ => [],
        };
        foreach (string name in needed)
        {
            CrossChecks.Need(values, $"{body}.{name}", $"a {shape} needs it", suggested);
        }

        string inner = $"{body}.inner_diameter", outer = $"{body}.diameter";
        if (shape == "tube" && values.Maybe(inner) >= values.Number(outer))
        {
            Entry entry = values.EntryOf(inner);
            values.Problems.Error(entry, $"{entry.Shown} (not below the outer diameter {values.EntryOf(outer).Shown})", "an inner diameter below the outer one", ValueSet.Fix(entry, ScenarioKeys.Find(inner)!, "\"...\" with a smaller length"));
        }
    }

    private static void CheckCounterweight(ValueSet values, int bodies)
    {
        const string Distance = "counterweight.distance", Greatest = "counterweight.greatest_distance";
        if (bodies == 0 && values.Document.Mentions("counterweight"))
        {
            Spot spot = values.Document.Sections.TryGetValue("counterweight", out Spot at) ? at : default;
            values.Problems.Error(spot, "counterweight", "a counterweight without bodies on the other side", "a counterweight together with [[payload]]", "[[payload]] with at least one body, or no [counterweight]");
        }

        if (values.Maybe(Greatest) < values.Number(Distance))
        {
            Entry entry = values.EntryOf(Greatest);
            values.Problems.Error(entry, $"{entry.Shown} (below the distance {values.EntryOf(Distance).Shown})", "at least the distance of the counterweight", ValueSet.Fix(entry, ScenarioKeys.Find(Greatest)!, values.EntryOf(Distance).Shown));
        }
    }
}
