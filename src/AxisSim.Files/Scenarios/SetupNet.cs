using AxisSim.Core.Bounds;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;

namespace AxisSim.Files.Scenarios;

/// <summary>Asks Core's own check about what has been made of the values: of figures that are good one by one and are not once they are converted or put together.</summary>
/// <remarks>Half-coil figures change with the wiring, bodies may have no inertia about an axis. A file that passes is a setup that Core takes.</remarks>
internal static class SetupNet
{
    private static readonly (string Part, string Section)[] s_sections =
    [
        ("Polar.Motor", "polar.motor"), ("Polar.Drive", "polar.drive"), ("Polar", "polar"),
        ("Declination.Motor", "declination.motor"), ("Declination.Drive", "declination.drive"), ("Declination", "declination"),
        ("Load", "payload"), ("Move", "move"), ("Disturbances", "disturbances"),
    ];

    /// <summary>Reports what Core refuses.</summary>
    public static void Report(MountSetup setup, ScenarioDocument document)
    {
        foreach (SetupProblem problem in SetupChecks.Problems(setup))
        {
            string section = Array.Find(s_sections, pair => problem.What.StartsWith(pair.Part, StringComparison.Ordinal)).Section ?? "";
            bool lumped = section == "payload" && document.ItemsOf("payload").Count == 0;
            string key = lumped ? "" : section;
            Spot spot = document.Sections.TryGetValue(key, out Spot at) ? at : default;
            document.Problems.Error(spot, key, $"figures that make {Words(problem.What)} {problem.Found}", problem.Allowed, "figures of this section that go together");
        }
    }

    private static readonly string[] s_units = ["Newton", "Kilogram", "Amperes", "Ohms", "Henries", "Farads", "Volts", "Hertz", "Radians", "Seconds", "Metres", "Kelvin", "Celsius"];

    /// <summary>The name of a property as words without its unit, which the bound tells: <c>HoldingTorqueNewtonMetres</c> is "holding torque".</summary>
    public static string Words(string what)
    {
        string name = what[(what.LastIndexOf('.') + 1)..];
        int unit = s_units.Select(word => name.IndexOf(word, StringComparison.Ordinal)).Where(at => at > 0).DefaultIfEmpty(name.Length).Min();
        name = name[..unit];
        return string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : c.ToString()));
    }
}
