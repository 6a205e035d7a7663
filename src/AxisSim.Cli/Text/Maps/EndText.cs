using AxisSim.Core.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>Ends of cells in words.</summary>
internal static class EndText
{
    /// <summary>What the move does.</summary>
    public static string Does(MapEnd end) => end switch
    {
        MapEnd.Arrives => "arrives",
        MapEnd.DoesNotSettle => "arrives but does not settle",
        MapEnd.ClutchSlips => "lets the clutch slip",
        MapEnd.Stalls => "stalls",
        MapEnd.NotWorkable => "moves too fast for any time step",
        MapEnd.Broken => "breaks the model down",
        MapEnd.NotValid => "is not valid",
        _ => "is not known",
    };

    /// <summary>The heading of the user's own point.</summary>
    public static string Loud(MapEnd end) => end switch
    {
        MapEnd.Arrives => "ARRIVES",
        MapEnd.DoesNotSettle => "DOES NOT SETTLE",
        MapEnd.ClutchSlips => "CLUTCH SLIPS",
        MapEnd.Stalls => "STALLS",
        _ => "NOT SIMULATED",
    };

    /// <summary>The name of a row of counts.</summary>
    public static string Row(MapEnd end) => end switch
    {
        MapEnd.Arrives => "arrives",
        MapEnd.DoesNotSettle => "does not settle",
        MapEnd.ClutchSlips => "clutch slips",
        MapEnd.Stalls => "stalls",
        MapEnd.NotWorkable => "too fast to simulate",
        MapEnd.Broken => "model breaks down",
        MapEnd.NotValid => "not valid",
        _ => "unknown",
    };
}
