using System.CommandLine;

namespace AxisSim.Cli.Input;

/// <summary>Arguments and options that several commands share, so that each means the same everywhere.</summary>
internal static class SharedOptions
{
    /// <summary>The scenario.</summary>
    public static Argument<string> File() => new("FILE") { Description = "Scenario file (TOML); axissim new FILE writes one to start from" };

    /// <summary>Which axes.</summary>
    public static Option<string> Axis() => new("--axis") { Description = "Which axis: polar, declination or both (the default: all that the scenario has)", HelpName = "AXIS" };

    /// <summary>Form of the output.</summary>
    public static Option<string> Format() => new("--format") { Description = "text for people (the default), or json for programs", HelpName = "FORM" };

    /// <summary>How many threads.</summary>
    public static Option<string> Threads() => new("--threads") { Description = "Threads to use (the default: all cores); the results do not depend on it", HelpName = "N" };

    /// <summary>Where to write files.</summary>
    public static Option<string> Out(string what, bool needed = false) => new("--out") { Description = $"{(needed ? "Needed: a folder" : "Folder")} for {what}; made if missing, files of the same names are replaced", HelpName = "DIR" };
}
