using AxisSim.Cli.Text.Balance;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>The JSON document of a balance.</summary>
internal sealed class BalanceDocument(BalanceAnswer answer, string file)
{
    private const string Kind = "balance";

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText(Kind, Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, Kind, Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", ScenarioEntry.Of(answer.Scenario, file)),
        ("verdict", GradeText.Verdict(answer)),
        ("reached", answer.Reached),
        ("graded", answer.Graded),
        ("balance", answer.Report),
        ("tried_as_typed", answer.Tried),
    ];
}
