using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks across the keys of the move and of the disturbances.</summary>
internal static class MoveChecks
{
    private static readonly string[] Ends = ["start", "end"];
    private static readonly string[] SkyKeys = ["hour_angle", "declination", "pier_side"];

    /// <summary>Reports all of them.</summary>
    public static void Report(ValueSet values, IReadOnlyList<string> axes, HashSet<string> suggested)
    {
        foreach (string end in Ends)
        {
            bool sky = IsSky(values, end);
            string[] mechanical = [.. ScenarioKeys.Axes.Select(axis => $"move.{end}_{axis}").Where(values.Written)];
            if (sky && mechanical.Length > 0)
            {
                Entry entry = values.EntryOf(mechanical[0]);
                values.Problems.Error(entry, $"{entry.Shown} besides a place on the sky (move.{end})", "mechanical angles, or hour_angle, declination and pier_side", "one of the two");
            }

            foreach (string path in sky ? SkyKeys.Select(name => $"move.{end}.{name}") : axes.Select(axis => $"move.{end}_{axis}"))
            {
                CrossChecks.Need(values, path, sky ? "a place on the sky needs it" : "the move needs it", suggested);
            }
        }

        CheckWind(values, suggested);
    }

    /// <summary>Whether an end of the move is given as a place on the sky.</summary>
    public static bool IsSky(ValueSet values, string end) => SkyKeys.Any(name => values.Written($"move.{end}.{name}"));

    private static void CheckWind(ValueSet values, HashSet<string> suggested)
    {
        double wind = Math.Abs(values.Number("disturbances.wind")), gust = Math.Abs(values.Number("disturbances.gust")), turbulence = values.Number("disturbances.turbulence");
        if (wind > 0.0 || gust > 0.0)
        {
            CrossChecks.Need(values, "disturbances.area", "wind needs the area that it meets", suggested);
            CrossChecks.Need(values, "disturbances.lever", "wind needs its lever about the axis", suggested);
        }

        if (turbulence > 0.0 && wind == 0.0)
        {
            values.Problems.Note(values.EntryOf("disturbances.turbulence"), "turbulence is a share of the steady wind, which is zero here, so it does nothing");
        }
    }
}
