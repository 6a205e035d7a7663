using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Batches;
using AxisSim.Core.Recommendations;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>The recommendation of one axis as a record for programs.</summary>
internal sealed record RecommendedAxisEntry(string Verdict, AxisSettings FileSettings, BatchResult? OwnMove, double StepSeconds, IReadOnlyList<string> Warnings, AxisRecommendation Answer);

/// <summary>The JSON document of a recommendation.</summary>
internal sealed class RecommendDocument(RecommendReport report, Scenario scenario)
{
    private const string Kind = "recommendation";

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText(Kind, Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, Kind, Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", new ScenarioEntry(scenario.Name, report.File, scenario.Sha256, report.Settings, scenario.Notes)),
        ("aim", report.Aim),
        ("margin", report.Margin),
        ("coarse", report.Coarse),
        ("tolerances", report.Tolerances),
        ("found", report.Found),
        ("set", report.Recommended),
        ("axes_that_fail_together", report.Together),
        ("axes", report.Axes.Select(Entry).ToArray()),
    ];

    private RecommendedAxisEntry Entry(RecommendedAxis advice) => new(
        RecommendVerdict.Of(report, advice), advice.Now, advice.Run, advice.StepSeconds, advice.Answer.Chosen is null ? [] : WarningText.Of(advice), advice.Answer);
}
