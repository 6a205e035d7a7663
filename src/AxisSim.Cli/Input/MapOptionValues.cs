using System.Globalization;
using AxisSim.Core.Maps;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Values of the options of maps, checked like <see cref="OptionValues"/> does.</summary>
internal sealed class MapOptionValues(List<Problem> problems)
{
    /// <summary>A grid that is fine enough to read and coarse enough to wait for.</summary>
    public const string DefaultGrid = "61,41";

    private const int MostAcross = 10_000;
    private const long MostCells = 4_000_000;
    private static readonly string[] Metrics = ["outcome", "margin", "settle", "duration", "temperature"];

    /// <summary>Columns and rows; zeros after a problem.</summary>
    public (int Columns, int Rows) Grid(string? grid)
    {
        string text = grid ?? DefaultGrid;
        string[] parts = text.Split(',', 'x');
        if (parts.Length != 2 || !Whole(parts[0], out long columns) || !Whole(parts[1], out long rows) || columns is < 2 or > MostAcross || rows is < 2 or > MostAcross || columns * rows > MostCells)
        {
            Add("--grid", $"\"{text}\"", "columns and rows, each from 2 to 10000, at most 4 million cells together", "--grid " + DefaultGrid);
            return (0, 0);
        }

        return ((int)columns, (int)rows);
    }

    /// <summary>What the map shows.</summary>
    public MapMetric Metric(string? metric)
    {
        int index = Array.IndexOf(Metrics, metric ?? Metrics[0]);
        if (index < 0)
        {
            Add("--metric", $"\"{metric}\"", string.Join(", ", Metrics), "--metric " + (NearestName.Of(metric!, Metrics) ?? Metrics[0]));
            return MapMetric.Outcome;
        }

        return (MapMetric)index;
    }

    /// <summary>The part of the map to compute, from 1, and the number of parts.</summary>
    public (int Index, int Count) Shard(string? shard, int columns, bool everyCell)
    {
        if (shard is null)
        {
            return (1, 1);
        }

        string[] parts = shard.Split('/');
        if (parts.Length != 2 || !Whole(parts[0], out long index) || !Whole(parts[1], out long count) || count < 1 || index < 1 || index > count)
        {
            Add("--shard", $"\"{shard}\"", "I/N: part I, from 1 to N, of N parts", "--shard 1/4");
            return (1, 1);
        }

        if (columns > 0 && count > columns)
        {
            Add("--shard", $"\"{shard}\" (more parts than the {columns.ToString(CultureInfo.InvariantCulture)} columns of the grid)", "at most one part for each column", $"--shard 1/{columns.ToString(CultureInfo.InvariantCulture)}");
        }

        if (!everyCell)
        {
            Add("--shard", $"\"{shard}\" with the adaptive grid, whose cells depend on their neighbours in other parts", "--shard together with --full", $"--full --shard {shard}");
        }

        return ((int)index, (int)Math.Min(count, int.MaxValue));
    }

    /// <summary>Says that an option which must be given is not.</summary>
    public void Missing(string option, string allowed, string fix) => Add(option, "nothing", allowed, fix);

    private static bool Whole(string text, out long number) => long.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out number) && number < 1_000_000_000;

    private void Add(string option, string found, string allowed, string fix) => problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
