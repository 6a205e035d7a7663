using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Reductions;
using AxisSim.Core.Questions;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs what the lesson on the reduction would tell to try, as typed.</summary>
internal static class ReductionTrial
{
    /// <summary>The reports with what holds.</summary>
    public static IReadOnlyList<ReductionReport> Of(Scenario scenario, IReadOnlyList<ReductionReport> reports, QuestionOptions options) =>
    [
        .. reports.Select(report =>
        {
            IReadOnlyList<string> against = ReductionAdvice.AgainstTheBound(report).Settings;
            return report with
            {
                AgainstTheBound = against.Count == 0 ? null : TypedTrial.First(scenario, [new TypedLine([report.Axis], against)], TypedTrial.AsItIs, options),
                AnotherReduction = TypedTrial.First(scenario, ReductionAdvice.Others(report), TypedTrial.AsItIs, options),
            };
        }),
    ];
}
