using System.Text;

namespace AxisSim.Files.Keys;

/// <summary>The table of keys as a page of the docs.</summary>
public static class KeyTable
{
    private const string Head = """
        # Keys of a scenario

        This page is made from the table of keys that the program itself reads by; a test says when it is stale.

        A scenario is a TOML file. Every value carries its unit, in quotes: `"14 kg"`, `"0.44 N*m"` (or `"0.44 N m"`), `"2.5 deg/s"`,
        `"160 x sidereal"`, `"30 arcsec"`. Counts, ratios and shares of one are plain numbers; a share may also be written `"45 %"`.
        Any other unit of the same kind that the UnitsNet library knows is accepted too, written exactly as it abbreviates it.
        `declination` takes the same keys as `polar`, and `like = "polar"` to take over all that it does not give itself; a list
        of stages of its own replaces that of the polar axis whole.

        On the command line `--set key=value` reaches every key by its dotted path, items of lists by their names:
        `--set payload.tube.mass="16 kg"`, `--set polar.stages.belt.ratio=5`. A setting replaces the value of the file and what it is an
        alternative to (`acceleration` replaces `ramp_time`); a setting of the polar axis goes on to a declination axis that is like it.

        ## Settings files

        A settings file is a part of a scenario in the same form: some keys and values, items of lists by their `name`. `--settings FILE` lays it over the
        scenario in every command that takes one, by the same rules; it may be repeated, the later wins, and `--set` wins over all. `axissim recommend`,
        `compare` and `balance` write such files into the folder of `--out`, each value with a comment on where it comes from and with what margin.
        An item of `payload` or `stages` that the scenario does not have is added when the file has all that it needs.
        `--write-scenario NEW.toml` (of these three, and of `check`) makes a whole scenario instead: values stand where your file has them, your comments
        stay, and a file that is there is never replaced.

        ## Currents and rates

        Currents are peaks of the phase sine; `"1.2 A rms"` is converted (times the square root of two) and both are shown.
        Rates of `changeover` and `start_rate` in deg/s, arcmin/s, arcsec/s or x sidereal are at the axis; in rpm, rev/s, rad/s or steps/s
        (full steps) at the motor. Everywhere else rad/s is at the axis. "x sidereal" is a multiple of the mean sidereal rate, 15.0410686403 arcsec/s.

        """;

    /// <summary>The page.</summary>
    public static string Markdown()
    {
        var text = new StringBuilder(Head.ReplaceLineEndings("\n"));
        IEnumerable<IGrouping<string, ScenarioKey>> sections = ScenarioKeys.All
            .Where(key => !key.Path.StartsWith("declination.", StringComparison.Ordinal) || key.Name == "like")
            .GroupBy(key => key.Section, StringComparer.Ordinal);
        foreach (IGrouping<string, ScenarioKey> section in sections)
        {
            text.Append("\n## ").Append(section.Key.Length == 0 ? "Top level" : $"`{section.Key}`").Append("\n\n| key | value | without it | meaning |\n|---|---|---|---|\n");
            foreach (ScenarioKey key in section)
            {
                string without = key.Required ? "required" : key.DefaultInWords ?? (key.Default!.Length == 0 ? "empty" : $"`{key.Default}`");
                text.Append("| `").Append(key.Name).Append("` | ").Append(Cell(key.Allowed)).Append(" | ").Append(Cell(without)).Append(" | ").Append(Cell(key.Doc)).Append(" |\n");
            }
        }

        return text.ToString();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);
}
