using System.Text;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>A commented scenario to start from, made from the table of keys, so that it can neither miss a key nor contradict it.</summary>
public static class ScenarioTemplate
{
    private const string Head = """
        # A scenario for AxisSim: one move of one mount. Change the values, then run: axissim check FILE, axissim simulate FILE.
        #
        # Every value carries its unit, in quotes: "14 kg", "0.44 N*m" or "0.44 N m", "2.5 deg/s", "160 x sidereal", "30 arcsec".
        # Plain numbers (teeth, ratios, shares of one) have no quotes; a share may also be written "45 %". The decimal sign is a point.
        # Lines that begin with "# key =" show what holds when the key is left out, or what could be written there.

        """;

    // Sections that replace others, or that most mounts do without: shown, but not in use.
    private static readonly Dictionary<string, string> Unused = new(StringComparer.Ordinal)
    {
        ["polar.flexible"] = "A payload that bends: leave this out for a rigid one.",
        ["polar.load"] = "A lumped load of this axis instead of [[payload]] and [counterweight].",
        ["move.start"] = "A place on the sky instead of start_polar and start_declination.",
        ["controller"] = "Your controller, when it asks for numbers in units of its own: axissim report then tells what to type.",
        ["controller.settings.<name>"] = "One of its settings; repeat [[controller.settings]] for each.",
        ["move.end"] = "A place on the sky instead of end_polar and end_declination.",
    };

    private static readonly Dictionary<string, string> Intro = new(StringComparer.Ordinal)
    {
        ["polar.motor"] = "The motor of the polar axis, from its datasheet.",
        ["polar.drive"] = "Its drive and supply. Currents are peaks of the phase sine; \"A rms\" is converted.",
        ["polar.stages.<name>"] = "Stages between motor and worm, from the motor on; repeat [[polar.stages]] for each, or leave it out.",
        ["polar.worm"] = "The worm: lead_angle with friction, or a plain efficiency.",
        ["polar.motion"] = "How the axis is commanded: ramp_time or acceleration, one of them.",
        ["declination"] = "The declination axis: all of the polar axis, but for what is given here, for example below [declination.motion].",
        ["tolerances"] = "What you do not know exactly, for axissim recommend: plus and minus shares of the values above.",
        ["payload.<name>"] = "What the mount carries; repeat [[payload]] for each body. Places are from where the two axes meet.",
    };

    // Optional keys that the template sets all the same, because a first run needs them or nearly every mount has them.
    private static readonly Dictionary<string, string> Set = new(StringComparer.Ordinal)
    {
        ["polar.motion.ramp_time"] = "\"2 s\"",
        ["polar.worm.lead_angle"] = "\"3.5 deg\"",
        ["polar.worm.friction"] = "0.08",
        ["polar.clutch.slip_torque"] = "\"60 N*m\"",
        ["declination.like"] = "\"polar\"",
        ["payload.<name>.length"] = "\"1.1 m\"",
        ["payload.<name>.diameter"] = "\"0.3 m\"",
        ["payload.<name>.inner_diameter"] = "\"0.29 m\"",
        ["description"] = "\"What this scenario is to show.\"",
        ["move.start_polar"] = "\"-60 deg\"",
        ["move.start_declination"] = "\"20 deg\"",
        ["move.end_polar"] = "\"-15 deg\"",
        ["move.end_declination"] = "\"50 deg\"",
        ["name"] = "\"my mount\"",
    };

    private static readonly Lazy<string> Written = new(Write);

    /// <summary>The text of the template.</summary>
    public static string Text => Written.Value;

    private static string Write()
    {
        var text = new StringBuilder(Head.ReplaceLineEndings("\n"));
        IEnumerable<IGrouping<string, ScenarioKey>> sections = ScenarioKeys.All
            .Where(key => !key.Path.StartsWith("declination.", StringComparison.Ordinal) || key.Path == "declination.like")
            .GroupBy(key => key.Section, StringComparer.Ordinal);
        foreach (IGrouping<string, ScenarioKey> section in sections)
        {
            AddSection(text, section.Key, section);
        }

        return text.ToString();
    }

    private static void AddSection(StringBuilder text, string section, IEnumerable<ScenarioKey> keys)
    {
        text.Append('\n');
        bool unused = Unused.TryGetValue(section, out string? why);
        if (why is not null || Intro.TryGetValue(section, out why))
        {
            text.Append("# ").Append(why).Append('\n');
        }

        if (section.Length > 0)
        {
            bool list = section.EndsWith(".<name>", StringComparison.Ordinal);
            string name = list ? $"[[{section[..^".<name>".Length]}]]" : $"[{section}]";
            text.Append(unused ? "# " : "").Append(name).Append('\n');
        }

        foreach (ScenarioKey key in keys)
        {
            bool set = !unused && (key.Required || Set.ContainsKey(key.Path));
            string value = Set.TryGetValue(key.Path, out string? own) ? own : key.Required ? key.Example : Preset(key) ?? key.Example;
            string without = key.DefaultInWords is { } words && !set ? $" (without: {words})" : "";
            text.Append("# ").Append(key.Doc).Append(without).Append('\n').Append(set ? "" : "# ").Append(key.Name).Append(" = ").Append(value).Append('\n');
        }
    }

    private static string? Preset(ScenarioKey key) => key.Default switch
    {
        null => null,
        "" => key.Example,
        _ when key.Kind is KeyKind.Text or KeyKind.Choice => $"\"{key.Default}\"",
        _ when key.Kind == KeyKind.Quantity && key.Dimension != Units.Dimension.Share => $"\"{key.Default}\"",
        _ => key.Default,
    };
}
