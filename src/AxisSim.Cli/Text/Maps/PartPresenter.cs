namespace AxisSim.Cli.Text.Maps;

/// <summary>What is said of one part of a map: a part alone is no map to read.</summary>
internal sealed class PartPresenter(Host host)
{
    /// <summary>Writes it.</summary>
    public void Write(MapReport report)
    {
        string shard = report.Header.Shard;
        int done = report.Cells.ComputedCount();
        host.Out.WriteLine($"Part {shard} is done: {Say.Many(done, "cell")} of {Say.Count(report.Cells.Count)} in its journal.");
        host.Out.WriteLine("When all parts are there: axissim merge DIR... --out DIR, with the folders of all parts, makes the map of them.");
    }
}
