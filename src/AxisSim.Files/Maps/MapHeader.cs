using AxisSim.Core.Maps;

namespace AxisSim.Files.Maps;

/// <summary>One key of a map, as it is kept in a journal.</summary>
/// <param name="Key">Dotted path.</param>
/// <param name="Unit">Unit as it was written; empty for plain numbers.</param>
/// <param name="SiUnit">SI unit as part of a column's name.</param>
/// <param name="Logarithmic">Whether the values are spaced by equal ratios.</param>
/// <param name="Values">The numbers in the unit.</param>
/// <param name="SiValues">The same in SI.</param>
/// <param name="Own">The file's own value.</param>
internal sealed record MapKey(string Key, string Unit, string SiUnit, bool Logarithmic, double[] Values, double[] SiValues, OwnValue Own)
{
    /// <summary>The key of a range.</summary>
    public static MapKey Of(MapRange range, OwnValue own) => new(range.Path, range.Unit, range.SiUnit, range.Shown.Logarithmic, [.. range.Shown.Values], [.. range.Si], own);

    /// <summary>The numbers in the unit as an axis.</summary>
    public GridAxis Axis() => new(Values, Logarithmic);

    /// <summary>A number before the unit as an SI value: units are straight lines through two points.</summary>
    public double ToSi(double shown) => SiValues[0] + ((shown - Values[0]) / (Values[^1] - Values[0]) * (SiValues[^1] - SiValues[0]));

    /// <summary>A number with the unit.</summary>
    public string Text(double shown) => MapRange.Number(shown) + (Unit.Length == 0 ? "" : " " + Unit);

    /// <summary>The range in words, for comparing and for messages.</summary>
    public string Range => $"{Key}={(Logarithmic ? "log " : "")}{MapRange.Number(Values[0])}..{Text(Values[^1])} in {MapRange.Number(Values.Length)} values";
}

/// <summary>All that a map is of: what it needs besides its cells to be written down.</summary>
internal sealed record MapHeader
{
    /// <summary>Version of the journal's form.</summary>
    public const int CurrentFormat = 1;

    public int Format { get; init; } = CurrentFormat;

    public required string Program { get; init; }

    public required string Scenario { get; init; }

    public required string File { get; init; }

    public required string[] Settings { get; init; }

    /// <summary>Settings files laid over the file, by name.</summary>
    public string[] SettingsFiles { get; init; } = [];

    public required string[] Notes { get; init; }

    public required string Sha256 { get; init; }

    public required string[] Axes { get; init; }

    public required MapKey X { get; init; }

    public required MapKey Y { get; init; }

    public required MapMetric Metric { get; init; }

    public required bool Full { get; init; }

    public required double StepSeconds { get; init; }

    /// <summary>Whether the file's own point is run too.</summary>
    public required bool HasOwnPoint { get; init; }

    /// <summary>Part of the whole, from 1.</summary>
    public int ShardIndex { get; init; } = 1;

    /// <summary>How many parts make the whole.</summary>
    public int ShardCount { get; init; } = 1;

    /// <summary>An empty map for this header.</summary>
    public MapCells NewCells() => new(X.Values.Length, Y.Values.Length, Metric);

    /// <summary>In what another run differs from this one, so that their cells do not belong together; empty when they do.</summary>
    public IReadOnlyList<string> DifferencesFrom(MapHeader other, bool withShard)
    {
        var differences = new List<string>();
        void Compare(string what, string mine, string theirs)
        {
            if (mine != theirs)
            {
                differences.Add($"{what} ({theirs} there, {mine} here)");
            }
        }

        Compare("format of the journal", MapRange.Number(Format), MapRange.Number(other.Format));
        Compare("program version", Program, other.Program);
        Compare("scenario or settings", Sha256[..12], other.Sha256[..12]);
        Compare("axis", string.Join(" and ", Axes), string.Join(" and ", other.Axes));
        Compare("--x", X.Range, other.X.Range);
        Compare("--y", Y.Range, other.Y.Range);
        Compare("metric", Name(Metric), Name(other.Metric));
        Compare("grid", Full ? "full" : "adaptive", other.Full ? "full" : "adaptive");
        Compare("step", MapRange.Number(StepSeconds) + " s", MapRange.Number(other.StepSeconds) + " s");
        if (withShard)
        {
            Compare("shard", Shard, other.Shard);
        }

        return differences;
    }

    /// <summary>The part as it is written on a command line.</summary>
    public string Shard => MapRange.Number(ShardIndex) + "/" + MapRange.Number(ShardCount);

    /// <summary>A metric as it is written on a command line.</summary>
    public static string Name(MapMetric metric) => metric switch
    {
        MapMetric.Margin => "margin",
        MapMetric.Settle => "settle",
        MapMetric.Duration => "duration",
        MapMetric.Temperature => "temperature",
        _ => "outcome",
    };
}
