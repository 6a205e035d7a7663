using System.CommandLine;
using System.Text;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Output;

/// <summary>A scenario to be written to a file that is not there yet.</summary>
internal sealed class NewScenario(string path, Host host)
{
    private const string Name = "--write-scenario";

    /// <summary>The first thing that went wrong; null so far so good.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The option.</summary>
    /// <param name="what">What is written into the scenario.</param>
    public static Option<string> Option(string what) =>
        new(Name) { Description = $"Write a whole scenario with {what} in their places, your comments kept; a file that is there is never replaced", HelpName = "NEW.toml" };

    /// <summary>The file that was asked for, null when none was; a problem is added when it is there or cannot be written, before the long work.</summary>
    public static NewScenario? Open(string? path, Host host, List<Problem> problems)
    {
        if (path is null)
        {
            return null;
        }

        string? stands = string.IsNullOrWhiteSpace(path) ? "\"\", no name of a file"
            : PlainText.FirstStrange(path) is { } strange ? $"\"{path}\" ({strange})"
            : Path.Exists(path) ? $"\"{path}\", which is there already"
            : AtomicFile.Try(path) is { } problem ? $"\"{path}\": {problem.Found}"
            : null;
        if (stands is not null)
        {
            problems.Add(new Problem(Name, 0, 0, "", stands, "the name of a file that is not there yet, in a folder that can be written", $"{Name} mount-2.toml, or another name"));
        }

        return new NewScenario(path, host);
    }

    /// <summary>Writes a scenario with what is laid over it.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="notes">What is to be said beside the values.</param>
    public void Write(Scenario scenario, IReadOnlyDictionary<string, string> notes)
    {
        host.Stop.ThrowIfCancellationRequested();
        string? text = ScenarioText.Whole(scenario, notes, out Problem? problem);
        Problem = text is null ? problem : AtomicFile.WriteUnlessThere(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
        if (Problem is null)
        {
            host.Written.Add(path);
        }
    }
}
