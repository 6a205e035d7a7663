using AxisSim.Cli.Text.Reductions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>The lesson of one axis as a record for programs.</summary>
internal sealed record ReductionEntry(
    MountAxis Axis, string Verdict, double SlewRateRadiansPerSecond, double AccelerationRadiansPerSecondSquared, double RampSeconds, double SettleToleranceRadians, ReductionResult Result);

/// <summary>The JSON document of the lesson on the reduction.</summary>
internal sealed class ReductionDocument(IReadOnlyList<ReductionReport> reports, string file, Scenario scenario)
{
    private const string Kind = "reduction";

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText(Kind, Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, Kind, Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", ScenarioEntry.Of(scenario, file)),
        ("axes", reports.Select(Entry).ToArray()),
    ];

    private static ReductionEntry Entry(ReductionReport report) => new(
        report.Axis, ReductionVerdict.Of(report), report.SlewRateRadiansPerSecond, report.AccelerationRadiansPerSecondSquared, report.RampSeconds, report.ToleranceRadians, report.Result);
}
