using AxisSim.Core.Mount;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Reads a scenario once for each value of a list, and says what is wrong with a value as with any setting.</summary>
internal static class VariantInput
{
    /// <summary>The mounts in the order of the values; problems are added, notes of the values are printed.</summary>
    public static IReadOnlyList<MountSetup> Read(Host host, Scenario scenario, string? list, IReadOnlyList<ForValue> values, List<Problem> problems)
    {
        var setups = new List<MountSetup>();
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (ForValue value in values)
        {
            ScenarioResult result = scenario.With([value.Setting]);
            foreach (Problem problem in result.Problems)
            {
                // Notes of the file itself have been printed.
                bool ofValue = problem.Line == scenario.Laid.Settings.Count + 1 && problem.File == "--set";
                Problem told = ofValue ? problem with { File = "--for", Line = 0, Fix = Fix(problem.Fix, list ?? "") } : problem;
                if (problem.Severity == ProblemSeverity.Error && said.Add(told.ToString()))
                {
                    problems.Add(told);
                }
                else if (ofValue && said.Add(told.ToString()))
                {
                    host.Error.WriteLine(told.ToString());
                }
            }

            if (result.Scenario is { } variant)
            {
                setups.Add(variant.Setup);
            }
        }

        return setups;
    }

    // A better key for a setting is a better key for the whole list; a better value is not.
    private static string Fix(string fix, string list)
    {
        const string set = "--set ";
        int equals = fix.IndexOf('=', StringComparison.Ordinal);
        if (!fix.StartsWith(set, StringComparison.Ordinal) || equals < 0)
        {
            return fix;
        }

        string key = fix[set.Length..equals].Trim('"'), values = list[(list.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim();
        return list.StartsWith(key + "=", StringComparison.Ordinal) ? "" : $"--for \"{key}={values}\"";
    }
}
