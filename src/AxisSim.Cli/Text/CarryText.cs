using AxisSim.Cli.Input;

namespace AxisSim.Cli.Text;

/// <summary>How settings that were found go on to the next command.</summary>
internal static class CarryText
{
    /// <summary>Settings of a recommendation.</summary>
    public const string Recommended = "recommended.toml";

    /// <summary>Settings of the best motor of a comparison.</summary>
    public const string BestMotor = "best-motor.toml";

    /// <summary>Places of a balanced payload.</summary>
    public const string Balanced = "balanced.toml";

    /// <summary>The folder that is named where none was asked for.</summary>
    private const string Folder = "results";

    /// <summary>What has to come first where the settings file was not written: a sentence with a space after it, or nothing.</summary>
    public static string First(string settingsFile, IReadOnlyList<string> files) =>
        Written(settingsFile, files) is null ? $"Run this again with --out {Folder}, which keeps the settings in {Folder}/{settingsFile}. " : "";

    /// <summary>A command on the scenario with the settings file.</summary>
    public static string Command(string command, string scenario, string settingsFile, IReadOnlyList<string> files) =>
        CommandText.Of(command, scenario, [Written(settingsFile, files) ?? $"{Folder}/{settingsFile}"], [], []);

    private static string? Written(string settingsFile, IReadOnlyList<string> files) => files.FirstOrDefault(file => Path.GetFileName(file) == settingsFile);
}
