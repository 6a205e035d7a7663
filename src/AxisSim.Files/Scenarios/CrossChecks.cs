using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks that need more than one key. A value that was refused reads as NaN and keeps its checks silent.</summary>
internal static class CrossChecks
{
    /// <summary>Reports all of them; what another message suggests already is not asked for again.</summary>
    public static void Report(ValueSet values, HashSet<string> suggested)
    {
        string[] axes = [.. ScenarioKeys.Axes.Where(axis => LikeAxis.Has(values.Document, axis))];
        if (axes.Length == 0 && !suggested.Any(key => key.StartsWith("polar", StringComparison.Ordinal) || key.StartsWith("declination", StringComparison.Ordinal)))
        {
            values.Problems.Error(default, "", "no axis", "sections of a polar axis, a declination axis, or both", "[polar.motor] and the other sections of that axis");
        }

        foreach (string axis in axes)
        {
            DriveChecks.Report(values, axis);
            TrainChecks.Report(values, axis, suggested);
        }

        LoadChecks.Report(values, axes, suggested);
        MoveChecks.Report(values, axes, suggested);
        ControllerChecks.Report(values, axes);
    }

    /// <summary>Reports a key that the others make necessary.</summary>
    public static void Need(ValueSet values, string path, string why, HashSet<string> suggested)
    {
        if (values.Written(path) || suggested.Contains(path) || ScenarioKeys.Find(path) is not { } key)
        {
            return;
        }

        string section = path.LastIndexOf('.') is int dot and > 0 ? path[..dot] : "";
        Spot spot = values.Document.Sections.TryGetValue(section, out Spot at) ? at : default;
        string under = spot.Line == 0 && section.Length > 0 ? $" under [{section}]" : "";
        values.Problems.Error(spot, path, $"nothing ({why})", key.Allowed, $"for example {key.Name} = {key.Example}{under}");
    }
}
