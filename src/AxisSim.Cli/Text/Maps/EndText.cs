using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text.Maps;

/// <summary>Ends of cells in words.</summary>
internal static class EndText
{
    /// <summary>What the move does.</summary>
    public static string Does(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "arrives",
        MoveEnd.DoesNotSettle => "arrives but does not settle",
        MoveEnd.ClutchSlips => "lets the clutch slip",
        MoveEnd.Stalls => "stalls",
        MoveEnd.NotWorkable => "moves too fast for any time step",
        MoveEnd.Broken => "breaks the model down",
        MoveEnd.NotValid => "is not valid",
        _ => "is not known",
    };

    /// <summary>The heading of the user's own point.</summary>
    public static string Loud(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "ARRIVES",
        MoveEnd.DoesNotSettle => "DOES NOT SETTLE",
        MoveEnd.ClutchSlips => "CLUTCH SLIPS",
        MoveEnd.Stalls => "STALLS",
        _ => "NOT SIMULATED",
    };

    /// <summary>The name of a row of counts.</summary>
    public static string Row(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "arrives",
        MoveEnd.DoesNotSettle => "does not settle",
        MoveEnd.ClutchSlips => "clutch slips",
        MoveEnd.Stalls => "stalls",
        MoveEnd.NotWorkable => "too fast to simulate",
        MoveEnd.Broken => "model breaks down",
        MoveEnd.NotValid => "not valid",
        _ => "unknown",
    };
}
