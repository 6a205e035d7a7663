using System.Globalization;
using System.Runtime.CompilerServices;
using AxisSim.Core.Bounds;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Mount.Checks;

/// <summary>What every study asks before it starts, of what comes from outside; setups that a study derives from it (a greater load, a lower rate) are not held to the bounds.</summary>
internal static class EntryCheck
{
    /// <summary>Throws one exception with all problems.</summary>
    public static void Require(MountSetup setup, MountAxis axis, double? stepSeconds = null, [CallerArgumentExpression(nameof(setup))] string argument = "") =>
        Require(setup, [axis], stepSeconds, argument);

    /// <summary>The same for several axes.</summary>
    public static void Require(MountSetup setup, IReadOnlyList<MountAxis> axes, double? stepSeconds = null, [CallerArgumentExpression(nameof(setup))] string argument = "")
    {
        ArgumentNullException.ThrowIfNull(setup, argument);
        Throw([.. SetupChecks.Problems(setup, axes), .. Step(stepSeconds)], argument);
    }

    /// <summary>The same for many setups; a problem names the one that it is of.</summary>
    public static void RequireAll<T>(IReadOnlyList<T> cases, Func<T, IReadOnlyList<SetupProblem>> problems, double? stepSeconds, string argument, IReadOnlyList<int>? numbers = null)
    {
        List<SetupProblem>? found = null;
        for (int i = 0; i < cases.Count && (found?.Count ?? 0) <= SetupProblem.Most; i++)
        {
            foreach (SetupProblem problem in problems(cases[i]))
            {
                found ??= [];
                found.Add(problem with { What = string.Create(CultureInfo.InvariantCulture, $"[{numbers?[i] ?? i}].{problem.What}") });
            }
        }

        Throw([.. found ?? [], .. Step(stepSeconds)], argument);
    }

    private static void Throw(IReadOnlyList<SetupProblem> problems, string argument) => SetupProblem.Throw(problems, argument, "the mount cannot be simulated as it is given:");

    private static IEnumerable<SetupProblem> Step(double? seconds)
    {
        if (seconds is { } step && !(step > 0.0 && double.IsFinite(step)))
        {
            yield return new SetupProblem("StepSeconds", ProblemCollector.Text(step), "a finite time above zero");
        }
    }
}
