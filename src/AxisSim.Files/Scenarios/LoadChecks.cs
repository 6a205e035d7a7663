using System.Globalization;
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
            double most = values.Number(Greatest), far = values.Number(Distance), mass = values.Number("counterweight.mass");
            Entry entry = values.EntryOf(Distance);
            string instead = double.IsFinite(mass) ? string.Create(CultureInfo.InvariantCulture, $" ({mass * far / most:G4} kg there weighs as much about the axis as {mass:G4} kg at {far:G4} m)") : "";
            values.Problems.Error(entry, $"{entry.Shown} (past the end of the bar, whose greatest_distance is {values.EntryOf(Greatest).Shown})", $"at most {values.EntryOf(Greatest).Shown}", ValueSet.Fix(entry, ScenarioKeys.Find(Distance)!, values.EntryOf(Greatest).Shown) + instead);
        }

        const string Bar = "counterweight.bar_length";
        if (values.Maybe(Bar) is > 0.0 and var bar && values.Number(Distance) > bar && !(values.Maybe(Greatest) < values.Number(Distance)))
        {
            values.Problems.Note(values.EntryOf(Distance), $"{values.EntryOf(Distance).Shown} puts the counterweight past the end of its bar of {values.EntryOf(Bar).Shown}: both are measured from the polar axis, so move it in and put on more mass, or give the bar's whole length");
        }
    }
}
