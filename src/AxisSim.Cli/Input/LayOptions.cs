using System.CommandLine;

namespace AxisSim.Cli.Input;

/// <summary>What a command line asks to lay over a scenario: names of settings files, and settings.</summary>
internal sealed record LaidArguments(string[] Files, string[] Settings);

/// <summary>The two options that lay values over a scenario: settings files, and single settings that win over them.</summary>
internal sealed class LayOptions
{
    /// <summary>Settings files.</summary>
    public Option<string[]> Files { get; } = new("--settings")
    {
        Description = "Lay a settings file (TOML) over FILE, such as recommend, compare and balance write with --out. May be repeated; the later wins",
        HelpName = "FILE",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    /// <summary>Single settings.</summary>
    public Option<string[]> Set { get; } = new("--set")
    {
        Description = "Lay a value over FILE and over --settings, as \"key=value\" with its unit: --set \"polar.motion.ramp_time=2 s\". May be repeated",
        HelpName = "key=value",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    /// <summary>What was asked for.</summary>
    public LaidArguments Of(ParseResult parsed)
    {
        ArgumentNullException.ThrowIfNull(parsed);
        return new LaidArguments(parsed.GetValue(Files) ?? [], parsed.GetValue(Set) ?? []);
    }
}
