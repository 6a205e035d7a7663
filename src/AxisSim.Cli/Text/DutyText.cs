using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text;

/// <summary>What is done without end, in words.</summary>
internal static class DutyText
{
    /// <summary>As in "slewing without end".</summary>
    public static string Doing(ContinuousDuty duty) => duty switch
    {
        ContinuousDuty.Slewing => "slewing",
        ContinuousDuty.Tracking => "tracking",
        _ => "holding",
    };
}
