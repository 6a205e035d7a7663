namespace AxisSim.Core.Outcomes;

/// <summary>How a simulated move ends, from the best to the worst; of two axes the worse counts.</summary>
/// <remarks>One name for each end in every study, map and file. Journals of maps hold the numbers: a new end goes to the end of the list.</remarks>
public enum MoveEnd
{
    /// <summary>Not run, or not yet.</summary>
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

    /// <summary>The model broke down: a quantity was no longer a finite number.</summary>
    Broken,

    /// <summary>The values contradict each other or the rest of the scenario: there is nothing to simulate.</summary>
    NotValid,
}
