using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>Checks of the two ranges against each other, and of their keys against the scenario.</summary>
internal static class RangeChecks
{
    /// <summary>Whether the two keys can be varied side by side.</summary>
    public static void Together(RangeReader x, RangeReader y, List<Problem> problems)
    {
        if (x.Path.Length == 0 || y.Path.Length == 0)
        {
            return;
        }

        if (x.Path == y.Path)
        {
            problems.Add(new Problem("--y", 0, 0, y.Path, "the key of --x again", "another key than that of --x", ""));
        }
        else if (Alternatives.Of(x.Path).Contains(y.Path))
        {
            problems.Add(new Problem("--y", 0, 0, y.Path, $"a key that says the same as {x.Path} of --x in another way", "one of the two, and another key", ""));
        }
    }

    /// <summary>Keys and items of lists that do not exist, told like those of settings.</summary>
    public static IEnumerable<Problem> OfKeys(string text, string file, LaidOver laid, RangeReader x, RangeReader y)
    {
        foreach ((string option, RangeReader range) in new[] { ("--x", x), ("--y", y) })
        {
            if (range.Path.Length == 0)
            {
                continue;
            }

            // Any value will do where only the key is looked at.
            LaidOver all = laid.With([$"{range.Path}={ScenarioKeys.Find(range.Path)?.Example.Trim('"') ?? "0"}"]);
            ScenarioDocument document = ScenarioReader.Lay(text, file, all);
            new UnknownKeys(document).Report();
            foreach (Problem problem in document.Problems.Sorted().Where(problem => problem.File == SettingsReader.Source && problem.Line == all.Settings.Count))
            {
                int equals = problem.Fix.IndexOf('=', StringComparison.Ordinal);
                string fix = equals > 0 && problem.Fix.StartsWith("--set ", StringComparison.Ordinal) && problem.Fix != SettingsReader.Example ? $"{option} \"{problem.Fix["--set ".Length..equals]}={range.Range}\"" : "";
                yield return problem with { File = option, Line = 0, Column = 0, Fix = fix };
            }
        }
    }
}
