using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Envelopes;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>One curve as a record for programs.</summary>
internal sealed record EnvelopeLineEntry(string Label, string? Setting, IReadOnlyList<GreatestRate> Rates);

/// <summary>The envelope of one axis as a record for programs.</summary>
internal sealed record EnvelopeEntry(
    MountAxis Axis, string Verdict, double LoadFactor, double AskedRateRadiansPerSecond, GreatestRate Own, double ResolutionRadiansPerSecond, double DistanceRadians, double PulseLimitRadiansPerSecond, string? Key, IReadOnlyList<EnvelopeLineEntry> Curves);

/// <summary>The JSON document of an envelope.</summary>
internal sealed class EnvelopeDocument(IReadOnlyList<EnvelopeReport> reports, IReadOnlyList<TypedLine> tries, string file, Scenario scenario)
{
    private const string Kind = "envelope";

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText(Kind, Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, Kind, Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", ProgramVersion.Record),
        ("scenario", ScenarioEntry.Of(scenario, file)),
        ("axes", reports.Select(Entry).ToArray()),
        ("tried_as_typed", tries),
    ];

    private static EnvelopeEntry Entry(EnvelopeReport report) => new(
        report.Axis,
        EnvelopeVerdict.Of(report),
        report.LoadFactor,
        report.AskedRadiansPerSecond,
        report.Own,
        report.ResolutionRadiansPerSecond,
        report.DistanceRadians,
        report.PulseLimitRadiansPerSecond,
        report.Key,
        [.. report.Lines.Select(line => new EnvelopeLineEntry(line.Label, line.Setting, line.Rates))]);
}
