using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text.Maps;
using AxisSim.Files.Maps;
using AxisSim.Plots;

namespace AxisSim.Cli.Output;

/// <summary>The files of a whole map, of one run or joined from parts.</summary>
internal static class MapFiles
{
    private const string Table = "map.csv";
    private const string Summary = "map.json";
    private const string Figure = "map";

    /// <summary>Takes away the summary of an earlier map: what lies there is not whole until it is written anew.</summary>
    public static void Begin(OutputFolder? folder) => folder?.Delete(Summary);

    /// <summary>Writes the table, then the figure, and the summary last: where it is, the set is whole and of one map.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, MapReport report)
    {
        Begin(folder);
        folder.Write(Table, stream => MapCsv.Write(stream, report.Header, report.Cells));
        MoveFiles.Figure(folder, Figure, MapFigure.Create(MapPictures.Of(report)));
        folder.Write(Summary, new MapDocument(report).Write);
    }
}
