using System.CommandLine;
using AxisSim.Files.Keys;

namespace AxisSim.Cli.Input;

/// <summary>Finds what is wrong with the arguments, in words that say what to write instead.</summary>
internal static class ArgumentCheck
{
    /// <summary>Problems of the arguments; empty when there are none.</summary>
    public static IReadOnlyList<string> Problems(RootCommand root, ParseResult parsed, string[] args)
    {
        Command command = parsed.CommandResult.Command;
        if (command is RootCommand)
        {
            return [WhichCommand(root, args)];
        }

        var problems = new List<string>();
        List<string> files = Scan(command, args[(Array.IndexOf(args, command.Name) + 1)..], [.. root.Options], problems);
        if (problems.Count > 0)
        {
            return problems;
        }

        bool several = command.Arguments is [{ Arity.MaximumNumberOfValues: > 1 }];
        if (files.Count == 0 && several)
        {
            string name = command.Arguments[0].Name;
            problems.Add($"no {name}: write axissim {command.Name} {name}..., where {name} is each of them: {command.Arguments[0].Description}");
        }
        else if (files.Count == 0)
        {
            problems.Add($"no FILE: write axissim {command.Name} FILE, where FILE is a scenario (axissim new FILE writes one to start from)");
        }
        else if (files.Count > 1 && !several)
        {
            problems.Add($"one FILE is wanted, but there are {Say.Count(files.Count)}: {string.Join(", ", files)}; a value with spaces needs quotes around key and value, --set \"polar.motion.ramp_time=2 s\"");
        }

        return problems.Count > 0 ? problems : [.. parsed.Errors.Select(error => error.Message)];
    }

    private static string WhichCommand(RootCommand root, string[] args)
    {
        if (args.Length > 0 && root.Options.FirstOrDefault(option => option.Name == args[0]) is { } whole)
        {
            return Alone(whole.Name);
        }

        string[] names = [.. root.Subcommands.Select(command => command.Name)];
        string? word = args.FirstOrDefault(arg => !arg.StartsWith('-'));
        if (word is null)
        {
            string? option = args.FirstOrDefault();
            return option is null
                ? $"no command: write one of {Say.List(names)}, such as axissim simulate mount.toml"
                : $"{option} is no option before a command: write one of {Say.List(names)} first, such as axissim simulate mount.toml";
        }

        string? near = NearestName.Of(word, names);
        return $"\"{word}\" is no command: {(near is null ? "write one of " + Say.List(names) : $"did you mean {near}?")}";
    }

    /// <summary>Goes through the arguments of a command; returns those that are no options.</summary>
    private static List<string> Scan(Command command, string[] args, IReadOnlyList<Option> everywhere, List<string> problems)
    {
        List<Option> options = [.. command.Options, .. everywhere.Where(option => option.Recursive)];
        var files = new List<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < args.Length; i++)
        {
            string arg = args[i];
            if (arg == "--")
            {
                files.AddRange(args[(i + 1)..]);
                break;
            }

            if (arg.Length < 2 || arg[0] != '-')
            {
                files.Add(arg);
                continue;
            }

            string name = arg.Split('=', ':')[0];
            Option? option = options.Find(candidate => candidate.Name == name || candidate.Aliases.Contains(name));
            if (option is null)
            {
                problems.Add(everywhere.Any(one => one.Name == name) ? Alone(name) : Unknown(command, name, options));
                i += i + 1 < args.Length && !args[i + 1].StartsWith('-') && files.Count > 0 ? 1 : 0;
                continue;
            }

            bool takesValue = option.Arity.MinimumNumberOfValues > 0;
            if (!seen.Add(name) && option.Arity.MaximumNumberOfValues <= 1)
            {
                problems.Add($"{name} is given twice: keep one of them");
            }

            if (takesValue && name == arg)
            {
                bool there = i + 1 < args.Length && !IsOption(args[i + 1], options);
                if (!there)
                {
                    string taken = i + 1 < args.Length ? $" ({args[i + 1]} is taken for the next option; a value that begins like one is written {name}={args[i + 1]})" : "";
                    problems.Add($"{name} lacks its value: {option.Description}{taken}");
                }

                i += there ? 1 : 0;
            }
        }

        return files;
    }

    // A negative number is a value, and so is a lone dash.
    private static bool IsOption(string arg, List<Option> options) =>
        arg.StartsWith("--", StringComparison.Ordinal) || options.Exists(option => option.Name == arg || option.Aliases.Contains(arg));

    private static string Alone(string name) => $"{name} stands alone: write axissim {name}";

    private static string Unknown(Command command, string name, List<Option> options)
    {
        string[] names = [.. options.Where(option => !option.Hidden).Select(option => option.Name).Where(known => known.StartsWith("--", StringComparison.Ordinal))];
        string? near = NearestName.Of(name, names);
        return $"{name} is no option of {command.Name}: {(near is null ? "its options are " + Say.List(names) : $"did you mean {near}?")}";
    }
}
