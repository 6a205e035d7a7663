using AxisSim.Core.Outcomes;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>The answers of docs/lesson-reduction.md: paper against program, and what the simulation says to them.</summary>
public sealed class LessonTests
{
    /// <summary>Two or three digits on paper, and angles for their sines.</summary>
    private const double PaperTolerance = 0.03;

    [Fact]
    public void Every_answer_on_paper_is_the_programs()
    {
        Assert.Equal([1, 2, 3, 4, 5], LessonTable.Results.Select(answer => answer.Question).Distinct());
        Assert.All(LessonTable.Results, answer => Assert.True(Math.Abs((answer.Paper / answer.Program) - 1.0) < PaperTolerance, $"{answer.What}: {answer.Paper} on paper, {answer.Program}"));
    }

    [Theory]
    [Trait("speed", "slow")]
    [InlineData("0.75", false)]
    [InlineData("1.1", true)]
    public void The_heavy_reflector_settles_where_friction_lag_is_within_the_band(string stage, bool settles)
    {
        AxisResult move = Shipped.Polar("heavy-reflector", explain: false, full: false, $"polar.stages.belt.ratio={stage}");
        double lag = new ReductionLaw(Shipped.Read("heavy-reflector").Setup, MountAxis.Polar, 0.0).FrictionLag(move.Outcome.Facts.TotalReduction);
        Assert.Equal(settles, lag <= move.Outcome.Settling!.ToleranceRadians);
        Assert.Equal(settles ? Verdict.Arrives : Verdict.DoesNotSettle, move.Outcome.Verdict);
    }
}
