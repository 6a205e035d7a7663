using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>One value of a list for a key.</summary>
/// <param name="Label">As it is shown: "8 kg".</param>
/// <param name="Setting">The setting that lays it over the file: "payload.tube.mass=8 kg".</param>
internal sealed record ForValue(string Label, string Setting);

/// <summary>Reads <c>--for "KEY=v1,v2,v3 UNIT"</c>.</summary>
internal static class ForValues
{
    /// <summary>As many as can be told apart by dash and mark in a figure.</summary>
    public const int Most = 7;

    private const string Option = "--for";
    private const string Form = "KEY=v1,v2,v3 UNIT: a key of the scenario that holds a number, up to 7 different values, the unit once at the end";
    private const string Example = "--for \"polar.drive.slew_current=0.7,0.9,1.1 A\"";

    // The envelope sets these itself.
    private static readonly string[] Swept = ["motion.slew_rate", "motion.ramp_time", "motion.acceleration"];

    /// <summary>The values; empty when the option is left out or after a problem.</summary>
    public static IReadOnlyList<ForValue> Read(string? text, List<Problem> problems)
    {
        if (text is null)
        {
            return [];
        }

        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string key = equals < 0 ? "" : text[..equals].Trim();
        if (key.Length == 0)
        {
            return Refuse(problems, "", $"\"{text}\" ({(equals < 0 ? "there is no = in it" : "there is no key before the =")})", Form, Example);
        }

        if (Swept.Any(name => key.EndsWith("." + name, StringComparison.Ordinal)))
        {
            return Refuse(problems, key, "a key that the envelope varies itself", "another key than slew rate, ramp time and acceleration", Example);
        }

        if (ScenarioKeys.Find(key) is { Kind: KeyKind.Text or KeyKind.Choice or KeyKind.Flag } words)
        {
            return Refuse(problems, key, $"a key that holds {(words.Kind == KeyKind.Flag ? "true or false" : words.Kind == KeyKind.Choice ? "one of a few words" : "a text")}", "a key that holds a number", Example);
        }

        return Values(key, text[(equals + 1)..].Trim().Trim('"'), problems);
    }

    private static IReadOnlyList<ForValue> Values(string key, string list, List<Problem> problems)
    {
        string[] parts = [.. list.Split(',').Select(part => part.Trim().Replace('\u2212', '-'))];
        string unit = parts[^1][NumberText.Length(parts[^1])..].Trim();
        if (parts.FirstOrDefault(part => NumberText.Length(part) == 0) is { } strange)
        {
            return Refuse(problems, key, strange.Length == 0 ? $"\"{list}\" (a value is missing)" : $"\"{strange}\" (there is no number at its start)", Form, Example);
        }

        if (parts[..^1].FirstOrDefault(part => NumberText.Length(part) < part.Length) is { } early)
        {
            return Refuse(problems, key, $"\"{early}\" (more than a number before the last value)", Form, Example);
        }

        string[] numbers = [.. parts.Select(part => part[..NumberText.Length(part)])];
        if (numbers.GroupBy(Number).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            return Refuse(problems, key, $"{twice.First()} twice in \"{list}\"; a comma parts two values and is not a decimal point", Form, Example);
        }

        if (numbers.Length > Most)
        {
            return Refuse(problems, key, $"{Say.Count(numbers.Length)} values", "up to 7: more curves could not be told apart in the figure", Example);
        }

        return [.. numbers.Select(number => unit.Length == 0 ? number : $"{number} {unit}").Select(value => new ForValue(value, $"{key}={value}"))];
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static IReadOnlyList<ForValue> Refuse(List<Problem> problems, string key, string found, string allowed, string fix)
    {
        problems.Add(new Problem(Option, 0, 0, key, found, allowed, fix));
        return [];
    }
}
