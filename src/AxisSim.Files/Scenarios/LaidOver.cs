namespace AxisSim.Files.Scenarios;

/// <summary>A settings file: some keys and values of a scenario in the form of a scenario, to lay over one.</summary>
/// <param name="Name">Its name as the user gave it, for messages.</param>
/// <param name="Text">Its text.</param>
public sealed record SettingsFile(string Name, string Text);

/// <summary>What is laid over the file of a scenario: settings files in their order, then the settings of the command line. Of two values for one key the later holds.</summary>
/// <param name="Files">Settings files (<c>--settings FILE</c>).</param>
/// <param name="Settings">The <c>key=value</c> texts of <c>--set</c>.</param>
public sealed record LaidOver(IReadOnlyList<SettingsFile> Files, IReadOnlyList<string> Settings)
{
    /// <summary>Nothing: the file as it stands.</summary>
    public static LaidOver Nothing { get; } = new([], []);

    /// <summary>The names of the settings files.</summary>
    public IReadOnlyList<string> FileNames => [.. Files.Select(file => file.Name)];

    /// <summary>Settings of the command line alone.</summary>
    public static LaidOver Of(IReadOnlyList<string> settings) => new([], settings);

    /// <summary>One settings file alone.</summary>
    public static LaidOver Of(SettingsFile file) => new([file], []);

    /// <summary>The same with further settings of the command line over it.</summary>
    public LaidOver With(IReadOnlyList<string> settings) => this with { Settings = [.. Settings, .. settings] };

    /// <summary>Reads the settings files; null with a problem for each that cannot be read.</summary>
    public static LaidOver? Load(IReadOnlyList<string> files, IReadOnlyList<string> settings, List<Problem> problems, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(problems);
        var read = new List<SettingsFile>();
        foreach (string file in files)
        {
            string? text = ScenarioFile.Load(file, "settings file", "recommended.toml", "the name of a settings file, such as axissim recommend, compare and balance write into the folder of --out", stop, out Problem? problem);
            if (text is null)
            {
                problems.Add(problem! with { File = file.Length == 0 ? "--settings" : file });
            }
            else
            {
                read.Add(new SettingsFile(file, text));
            }
        }

        return read.Count == files.Count ? new LaidOver(read, settings) : null;
    }
}
