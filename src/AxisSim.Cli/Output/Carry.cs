using System.Text;
using AxisSim.Cli.Input;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Settings that a command found, made ready for the next command: as a settings file, or written into a whole scenario.</summary>
/// <param name="Scenario">The scenario for which they were found.</param>
/// <param name="File">Name of the settings file.</param>
/// <param name="About">What they are, in a sentence or two for the head of the file.</param>
/// <param name="Found">The settings.</param>
internal sealed record Carry(Scenario Scenario, string File, string About, IReadOnlyList<NotedSetting> Found)
{
    /// <summary>What is said of a value that keeps the other axis as it is.</summary>
    public const string Kept = "as before: the settings are for the polar axis alone";

    /// <summary>The settings file.</summary>
    public string Text => SettingsText.Of(Scenario, [.. About.Split('\n'), "Lay this file over the scenario with --settings; a --set beside it wins. It is a prediction: begin slowly, with a hand at the power switch."], Found);

    /// <summary>The scenario as it is read with the file that settings make, and nothing else, laid over it; null when they contradict it.</summary>
    public static Scenario? Read(Scenario scenario, IReadOnlyList<string> settings) =>
        scenario.Under(LaidOver.Of(new SettingsFile("settings", SettingsText.Of(scenario, [], [.. settings.Select(setting => new NotedSetting(setting, ""))])))).Scenario;

    /// <summary>Takes away what an earlier run wrote, and writes the file unless there is none.</summary>
    public static void Write(OutputFolder folder, string file, Carry? carry)
    {
        folder.Remove(file);
        if (carry is not null)
        {
            folder.Write(file, stream => stream.Write(Encoding.UTF8.GetBytes(carry.Text)));
        }
    }

    /// <summary>Writes the whole scenario where it was asked for.</summary>
    public void WriteScenario(NewScenario? asked) =>
        asked?.Write(Scenario.Under(LaidOver.Of(new SettingsFile(File, Text))).Scenario!, SettingsText.Notes(Scenario, Found));
}
