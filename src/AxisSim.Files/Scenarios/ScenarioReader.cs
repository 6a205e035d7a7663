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
        return ReadFile(path, LaidOver.Of(settings), stop);
    }

    /// <summary>Reads a file with settings files and settings laid over it.</summary>
    /// <param name="path">File.</param>
    /// <param name="laid">What is laid over it.</param>
    /// <param name="stop">Ends the waiting for a file that does not come, with an <see cref="OperationCanceledException"/>.</param>
    public static ScenarioResult ReadFile(string path, LaidOver laid, CancellationToken stop = default)
    {
        string? text = ScenarioFile.Load(path, stop, out Problem? problem);
        return text is null ? new ScenarioResult(null, [problem!]) : ReadText(text, path, laid);
    }

    /// <summary>Reads the text of a file; the file name is only for messages.</summary>
    public static ScenarioResult ReadText(string text, string fileName, IReadOnlyList<string> settings) => ReadText(text, fileName, LaidOver.Of(settings));

    /// <summary>The same with settings files and settings laid over it.</summary>
    public static ScenarioResult ReadText(string text, string fileName, LaidOver laid)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(laid);
        if (string.IsNullOrWhiteSpace(text))
        {
            return new ScenarioResult(null, [ScenarioFile.Empty(fileName)]);
        }

        ScenarioDocument document = Lay(text, fileName, laid);
        var values = new ValueSet(document);
        Check(document, values);
        if (document.Problems.HasErrors)
        {
            return new ScenarioResult(null, document.Problems.Sorted());
        }

        Scenario scenario = ScenarioBinding.Bind(values) with { Sha256 = Hash(text, laid), Source = new ScenarioSource(text, fileName, laid), InForce = [.. document.Laid.Select(entry => $"{entry.Path}={entry.Text}")] };
        PlanChecks.Report(scenario.Setup, values);
        HorizonChecks.Report(scenario, values);
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
    internal static ScenarioDocument Lay(string text, string fileName, LaidOver laid)
    {
        ScenarioDocument document = TomlText.Parse(text, fileName);
        Entry[] all = [.. laid.Files.SelectMany(file => SettingsLayer.Read(file, document)), .. SettingsReader.Read(laid.Settings, document.Problems)];
        IReadOnlyList<Entry> over = Overlay.OfAxesThere(document, all);
        bool like = over.Any(setting => setting.Path == "declination.like") || document.Entries.ContainsKey("declination.like");
        Overlay.Apply(document, like ? over.Where(setting => !LikeAxis.IsAfter(setting)) : over);
        if (like)
        {
            LikeAxis.Expand(document);
            Overlay.Apply(document, over.Where(LikeAxis.IsAfter));
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

    /// <summary>SHA-256 of a text and what is laid over it.</summary>
    internal static string Hash(string text, LaidOver laid)
    {
        string all = text + string.Concat(laid.Files.Select(file => "\n--settings " + file.Text)) + string.Concat(laid.Settings.Select(setting => "\n--set " + setting));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)));
    }
}
