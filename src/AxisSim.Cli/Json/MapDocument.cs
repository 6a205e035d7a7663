using AxisSim.Cli.Text.Maps;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Json;

/// <summary>One key of a map as a record for programs.</summary>
internal sealed record MapKeyEntry(string Key, string Unit, string SiUnit, bool Logarithmic, int Count, double From, double To, double FromSi, double ToSi, double Own, double OwnSi, bool OwnByDefault);

/// <summary>A distance to the edge as a record for programs.</summary>
internal sealed record DistanceEntry(string Key, string Direction, double Edge, double EdgeSi, double Distance, double Share, double Beyond, string? BeyondEnd);

/// <summary>The JSON document of a map. Nothing in it depends on how the work was done: threads, stops, parts.</summary>
internal sealed class MapDocument(MapReport report)
{
    private readonly MapHeader header = report.Header;
    private readonly MapCells cells = report.Cells;

    /// <summary>The document as text.</summary>
    public string Text() => OutcomeJson.ToText("map", Parts());

    /// <summary>Writes the document.</summary>
    public void Write(Stream stream) => OutcomeJson.Write(stream, "map", Parts());

    private (string, object?)[] Parts() =>
    [
        ("program", new ProgramVersion(ProgramVersion.Record.Name, header.Program)),
        ("scenario", new ScenarioEntry(header.Scenario, header.File, header.Sha256, header.SettingsFiles, header.Settings, header.Notes)),
        ("axes", header.Axes),
        ("x", Entry(header.X)),
        ("y", Entry(header.Y)),
        ("metric", MapHeader.Name(header.Metric)),
        ("asked_step_seconds", header.StepSeconds),
        ("grid", new { Kind = header.Full ? "full" : "adaptive", cells.Columns, cells.Rows, Cells = cells.Count, Computed = cells.ComputedCount() }),
        ("own_point", report.Own.End == MoveEnd.Unknown ? null : Own(report.Own)),
        ("counts", Enum.GetValues<MoveEnd>().Where(end => end != MoveEnd.Unknown).ToDictionary(MapCsv.Name, cells.CountOf)),
        ("first_not_valid", report.Invalid.Text),
        ("distances", report.Distances.Select(Entry).ToArray()),
    ];

    private object Own(CellResult own) => new
    {
        End = MapCsv.Name(own.End),
        OnTheMap = report.Distances.Count > 0,
        own.FailureSeconds,
        own.SlewSeconds,
        own.SettleSeconds,
        own.DurationSeconds,
        own.TorqueMargin,
        own.ContinuousCelsius,
    };

    private static MapKeyEntry Entry(MapKey key) => new(
        key.Key, key.Unit, key.SiUnit, key.Logarithmic, key.Values.Length, key.Values[0], key.Values[^1], key.SiValues[0], key.SiValues[^1], key.Own.Shown, key.Own.Si, key.Own.ByDefault);

    private DistanceEntry Entry(EdgeDistance distance)
    {
        MapKey key = report.Key(distance.Along);
        double away = Math.Abs(distance.EdgeValue - key.Own.Shown);
        return new DistanceEntry(key.Key, distance.Up ? "up" : "down", distance.EdgeValue, key.ToSi(distance.EdgeValue), away, away / Math.Abs(key.Own.Shown), distance.BeyondValue, distance.BeyondEnd == MoveEnd.Unknown ? null : MapCsv.Name(distance.BeyondEnd));
    }
}
