using System.Security.Cryptography;
using System.Text;

namespace AxisSim.Files.Scenarios;

/// <summary>Reads scenario files: TOML with a unit at every value, checked whole before anything is computed.</summary>
public static class ScenarioReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">File.</param>
    /// <param name="settings">The <c>key=value</c> texts of the command line's <c>--set</c>.</param>
    /// <param name="stop">Ends the waiting for a file that does not come, with an <see cref="OperationCanceledException"/>.</param>
    public static ScenarioResult ReadFile(string path, IReadOnlyList<string> settings, CancellationToken stop = default)
    {
        string? text = ScenarioFile.Load(path, stop, out Problem? problem);
        return text is null ? new ScenarioResult(null, [problem!]) : ReadText(text, path, settings);
    }

    /// <summary>Reads the text of a file; the file name is only for messages.</summary>
    public static ScenarioResult ReadText(string text, string fileName, IReadOnlyList<string> settings)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(settings);
        if (string.IsNullOrWhiteSpace(text))
        {
            return new ScenarioResult(null, [ScenarioFile.Empty(fileName)]);
        }

        ScenarioDocument document = Lay(text, fileName, settings);
        var values = new ValueSet(document);
        Check(document, values);
        if (document.Problems.HasErrors)
        {
            return new ScenarioResult(null, document.Problems.Sorted());
        }

        Scenario scenario = ScenarioBinding.Bind(values) with { Sha256 = Hash(text, settings), Source = new ScenarioSource(text, fileName, settings) };
        PlanChecks.Report(scenario.Setup, values);
        if (!document.Problems.HasErrors)
        {
            SetupNet.Report(scenario.Setup, document);
        }

        if (!document.Problems.HasErrors)
        {
            StepChecks.Report(scenario.Setup, values);
        }

        return new ScenarioResult(document.Problems.HasErrors ? null : scenario, document.Problems.Sorted());
    }

    /// <summary>The values of a text with settings laid over them, before any is checked.</summary>
    internal static ScenarioDocument Lay(string text, string fileName, IReadOnlyList<string> settings)
    {
        ScenarioDocument document = TomlText.Parse(text, fileName);
        IReadOnlyList<Entry> laidOver = SettingsReader.Read(settings, document.Problems);
        bool like = laidOver.Any(setting => setting.Path == "declination.like") || document.Entries.ContainsKey("declination.like");
        SettingsReader.Apply(document, like ? laidOver.Where(setting => !LikeAxis.IsAfter(setting)) : laidOver);
        if (like)
        {
            LikeAxis.Expand(document);
            SettingsReader.Apply(document, laidOver.Where(LikeAxis.IsAfter));
        }

        return document;
    }

    /// <summary>Checks every value by itself and what is missing; the keys that messages suggest already, null when checks across keys make no sense yet.</summary>
    internal static HashSet<string>? CheckEach(ScenarioDocument document, ValueSet values)
    {
        // Once a section header is broken, what follows it seems to be in the wrong place: only the syntax is reported then.
        if (document.SectionsBroken)
        {
            return null;
        }

        var unknown = new UnknownKeys(document);
        unknown.Report();
        values.ReadAll();
        if (document.BrokenLines.Count > 0)
        {
            return null;
        }

        MissingKeys.Report(document, unknown.Suggested);
        return unknown.Suggested;
    }

    private static void Check(ScenarioDocument document, ValueSet values)
    {
        if (CheckEach(document, values) is { } suggested)
        {
            CrossChecks.Report(values, suggested);
        }
    }

    /// <summary>SHA-256 of a text and its settings.</summary>
    internal static string Hash(string text, IReadOnlyList<string> settings)
    {
        string all = text + string.Concat(settings.Select(setting => "\n--set " + setting));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)));
    }
}
