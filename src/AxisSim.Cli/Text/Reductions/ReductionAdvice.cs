namespace AxisSim.Cli.Text.Reductions;

internal static class ReductionAdvice
{
    public static void Write(Page page, IReadOnlyList<ReductionReport> reports)
    {
    }
}
