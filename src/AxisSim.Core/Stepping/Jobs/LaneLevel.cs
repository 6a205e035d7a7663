namespace AxisSim.Core.Stepping.Jobs;

/// <summary>Which phase current holds: names the places of <c>LaneLevels</c>.</summary>
internal enum LaneLevel
{
    /// <summary>Before the fall of the current, microstepping.</summary>
    SlewMicrostepping,

    /// <summary>Before it, full-stepping.</summary>
    SlewFullStepping,

    /// <summary>After it, microstepping.</summary>
    LaterMicrostepping,

    /// <summary>After it, full-stepping.</summary>
    LaterFullStepping,

    /// <summary>One ampere, for commands that hold amperes.</summary>
    Unity,
}
