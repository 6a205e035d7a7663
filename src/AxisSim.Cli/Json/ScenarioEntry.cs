using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Json;

/// <summary>Which scenario a document is about.</summary>
/// <param name="Name">Its name.</param>
/// <param name="File">File as the user gave it.</param>
/// <param name="Sha256">SHA-256 of its text and the settings.</param>
/// <param name="SettingsFiles">Settings files laid over it, by name.</param>
/// <param name="Settings">Settings of the command line.</param>
/// <param name="Notes">What the reader made of its figures.</param>
internal sealed record ScenarioEntry(string Name, string File, string Sha256, IReadOnlyList<string> SettingsFiles, IReadOnlyList<string> Settings, IReadOnlyList<string> Notes)
{
    /// <summary>The entry of a scenario that was read from a file.</summary>
    public static ScenarioEntry Of(Scenario scenario, string file) => new(scenario.Name, file, scenario.Sha256, scenario.Laid.FileNames, scenario.Laid.Settings, scenario.Notes);
}
