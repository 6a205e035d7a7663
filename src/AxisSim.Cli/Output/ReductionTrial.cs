using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Reductions;
using AxisSim.Core.Questions;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs what the lesson on the reduction would tell to try, as typed.</summary>
internal static class ReductionTrial
{
    /// <summary>No more than the load as it is was promised.</summary>
    private const double AsItIs = 1.0;

    /// <summary>The reports with what holds.</summary>
    public static IReadOnlyList<ReductionReport> Of(Scenario scenario, IReadOnlyList<ReductionReport> reports, QuestionOptions options) =>
    [
        .. reports.Select(report =>
        {
            IReadOnlyList<string> against = ReductionAdvice.AgainstTheBound(report).Settings;
            return report with
            {
                AgainstTheBound = against.Count == 0 ? null : TypedTrial.First(scenario, [new TypedLine([report.Axis], against)], AsItIs, options),
                AnotherReduction = TypedTrial.First(scenario, ReductionAdvice.Others(report), AsItIs, options),
            };
        }),
    ];
}
