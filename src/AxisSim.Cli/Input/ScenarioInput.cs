using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Reads the scenario of a command and reports what is wrong with it and with the options together.</summary>
internal static class ScenarioInput
{
    /// <summary>The scenario; null after every problem was printed.</summary>
    public static Scenario? Read(Host host, string file, LaidArguments laid, OptionValues options)
    {
        ScenarioResult result = Read(file, laid, host.Stop);
        Problem[] errors = [.. options.Problems, .. result.Problems.Where(problem => problem.Severity == ProblemSeverity.Error)];
        Print(host, errors);
        foreach (Problem note in result.Problems.Where(problem => problem.Severity == ProblemSeverity.Note))
        {
            host.Error.WriteLine(note.ToString());
        }

        return errors.Length > 0 ? null : result.Scenario;
    }

    /// <summary>The scenario with its settings files, or all that is wrong with them.</summary>
    public static ScenarioResult Read(string file, LaidArguments laid, CancellationToken stop)
    {
        var unreadable = new List<Problem>();
        LaidOver? over = LaidOver.Load(laid.Files, laid.Settings, unreadable, stop);
        ScenarioResult result = ScenarioReader.ReadFile(file, over ?? LaidOver.Of(laid.Settings), stop);
        return over is null ? new ScenarioResult(null, [.. result.Problems, .. unreadable]) : result;
    }

    /// <summary>Prints problems, and how many there are when more than one.</summary>
    public static void Print(Host host, IReadOnlyList<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            host.Error.WriteLine(problem.ToString());
        }

        if (problems.Count > 1)
        {
            host.Error.WriteLine($"{Say.Count(problems.Count)} problems; nothing was computed.");
        }
    }
}
