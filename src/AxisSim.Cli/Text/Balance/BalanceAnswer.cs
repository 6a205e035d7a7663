using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Text.Balance;

/// <summary>All that is said about a balance.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Report">The imbalance over all poses, and how to remove it.</param>
/// <param name="Reached">The worst poses that matter, polar axis first; both axes, whether or not the scenario has motors for them.</param>
/// <param name="Graded">The worst of each axis that the scenario describes, held against friction, motor and clutch.</param>
/// <param name="Tried">The steps with what holds as typed.</param>
internal sealed record BalanceAnswer(Scenario Scenario, BalanceReport Report, IReadOnlyList<ReachedImbalance> Reached, IReadOnlyList<GradedImbalance> Graded, BalanceTried Tried)
{
    /// <summary>Nobody balances more finely than this, N m; it counts where the scenario describes no axis to grade against.</summary>
    private const double GoodNewtonMetres = 0.05;

    /// <summary>The worst grade; of an axis that is not described, by what a hand can set.</summary>
    public ImbalanceGrade Grade => Reached.Max(GradeOf);

    /// <summary>The grade of an axis.</summary>
    public ImbalanceGrade GradeOf(ReachedImbalance reached) =>
        Graded.FirstOrDefault(graded => graded.Axis == reached.Axis)?.Grade ?? (reached.Worst.NewtonMetres < GoodNewtonMetres ? ImbalanceGrade.CannotBeFelt : ImbalanceGrade.TakesTorque);
}
