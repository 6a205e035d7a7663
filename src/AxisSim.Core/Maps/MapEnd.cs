using AxisSim.Core.Batches;

namespace AxisSim.Core.Maps;

/// <summary>How a cell of a map ends, from the best to the worst; of two axes the worse counts.</summary>
public enum MapEnd
{
    /// <summary>Not known yet.</summary>
    Unknown,

    /// <summary>It arrives (and settles, where settling was asked for).</summary>
    Arrives,

    /// <summary>It arrives but does not settle in the time observed; only where settling was asked for.</summary>
    DoesNotSettle,

    /// <summary>The clutch slips.</summary>
    ClutchSlips,

    /// <summary>The motor loses sync with its command.</summary>
    Stalls,

    /// <summary>No step is short enough for its motion: not simulated.</summary>
    NotWorkable,

    /// <summary>A quantity was no longer a finite number.</summary>
    Broken,

    /// <summary>The values of the cell contradict each other or the rest of the scenario: there is nothing to simulate.</summary>
    NotValid,
}

/// <summary>Ends of batches as ends of maps.</summary>
public static class MapEnds
{
    /// <summary>The end of a cell from the end of its case.</summary>
    public static MapEnd Of(BatchEnd end) => end switch
    {
        BatchEnd.Arrives => MapEnd.Arrives,
        BatchEnd.Stalls => MapEnd.Stalls,
        BatchEnd.ClutchSlips => MapEnd.ClutchSlips,
        BatchEnd.DoesNotSettle => MapEnd.DoesNotSettle,
        BatchEnd.Broken => MapEnd.Broken,
        _ => MapEnd.NotWorkable,
    };
}
