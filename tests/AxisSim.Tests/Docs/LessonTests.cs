using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>The answers of docs/lesson-reduction.md: paper against program, and what the simulation says to them.</summary>
public sealed class LessonTests
{
    /// <summary>Two or three digits on paper, and angles for their sines.</summary>
    private const double PaperTolerance = 0.03;

    /// <summary>The page says two or three digits of it.</summary>
    private const double SaidTolerance = 0.01;

    [Fact]
    public void Every_answer_on_paper_is_the_programs()
    {
        Assert.Equal([1, 2, 3, 4, 5], LessonTable.Results.Select(answer => answer.Question).Distinct());
        Assert.All(LessonTable.Results, answer => Assert.True(Math.Abs((answer.Paper / answer.Program) - 1.0) < PaperTolerance, $"{answer.What}: {answer.Paper} on paper, {answer.Program}"));
    }

    [Fact]
    public void The_page_says_on_paper_what_the_table_works_out()
    {
        string page = string.Join(' ', File.ReadAllText(Repository.PathOf("docs", "lesson-reduction.md")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.All(LessonTable.Results, answer =>
        {
            int end = page.IndexOf(answer.Said, StringComparison.Ordinal) + answer.Said.Length;
            Assert.True(end >= answer.Said.Length && !char.IsAsciiDigit(page[end]), $"the page does not say: {answer.Said}");
            double said = double.Parse(answer.Said.Split(' ')[^1], CultureInfo.InvariantCulture);
            Assert.True(Math.Abs((said / answer.Paper) - 1.0) < SaidTolerance, $"{answer.What}: {said} on the page, {answer.Paper} worked out");
        });
    }

    [Fact]
    [Trait("speed", "slow")]
    public void On_the_benchmark_mount_full_stepping_binds_far_below_paper()
    {
        ReductionResult result = ReductionStudy.Run(Shipped.Read("nominal").Setup, MountAxis.Polar, new ReductionOptions { TotalRatios = [] });
        Assert.Equal(Limit.Swings, result.Own.Bound);
        Assert.InRange(result.Own.SafeRateRadiansPerSecond / result.Own.Facts.RateRadiansPerSecond, 0.0, 0.25);
    }

    [Theory]
    [Trait("speed", "slow")]
    [InlineData("0.75", false)]
    [InlineData("1.1", true)]
    public void The_heavy_reflector_settles_where_friction_lag_is_within_the_band(string stage, bool settles)
    {
        AxisResult move = Shipped.Polar("heavy-reflector", explain: false, $"polar.stages.belt.ratio={stage}");
        double lag = new ReductionLaw(Shipped.Read("heavy-reflector").Setup, MountAxis.Polar, 0.0).FrictionLag(move.Outcome.Facts.TotalReduction);
        Assert.Equal(settles, lag <= move.Outcome.Settling!.ToleranceRadians);
        Assert.Equal(settles ? MoveEnd.Arrives : MoveEnd.DoesNotSettle, move.Outcome.Verdict);
    }
}
