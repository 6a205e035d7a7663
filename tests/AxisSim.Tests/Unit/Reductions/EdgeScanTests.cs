using AxisSim.Core.Reductions;

namespace AxisSim.Tests.Unit.Reductions;

/// <summary>The search on a logarithmic scale against questions whose answer is known.</summary>
public sealed class EdgeScanTests
{
    [Theory]
    [InlineData(0.9)]
    [InlineData(0.31)]
    [InlineData(0.13)]
    [InlineData(1.45)]
    [InlineData(4.0)]
    [InlineData(1.0)]
    public void An_edge_is_found_to_the_tolerance(double edge)
    {
        EdgeScan search = Run(new EdgeScan(0.01, 1.0, 10.0), value => value <= edge);
        Assert.InRange(edge, search.LastGood!.Value, search.FirstBad!.Value);
        Assert.InRange(search.FirstBad.Value / search.LastGood.Value, 1.0, 1.0 + EdgeScan.Tolerance);
    }

    [Fact]
    public void An_island_above_a_failure_does_not_count()
    {
        EdgeScan search = Run(new EdgeScan(0.01, 1.0, 10.0), value => value is <= 0.6 or >= 1.1);
        Assert.InRange(search.LastGood!.Value, 0.6 / (1.0 + EdgeScan.Tolerance), 0.6);
    }

    [Fact]
    public void Where_all_is_good_it_ends_at_the_top_and_where_none_is_there_is_none()
    {
        EdgeScan good = Run(new EdgeScan(0.01, 1.0, 7.5), _ => true);
        Assert.Equal((7.5, null), (good.LastGood, good.FirstBad));
        EdgeScan bad = Run(new EdgeScan(0.01, 1.0, 7.5), _ => false);
        Assert.Null(bad.LastGood);
    }

    [Fact]
    public void Nothing_is_tried_outside_the_bounds_and_nothing_twice()
    {
        var tried = new List<double>();
        Run(new EdgeScan(0.4, 1.0, 1.2), value =>
        {
            tried.Add(value);
            return value < 0.41;
        });
        Assert.All(tried, value => Assert.InRange(value, 0.4, 1.2));
        Assert.Equal(tried.Count, tried.Distinct().Count());
        Assert.Empty(new EdgeScan(0.0, 0.0, 0.0).Next());
        Assert.Empty(new EdgeScan(2.0, 1.0, 1.5).Next());
    }

    private static EdgeScan Run(EdgeScan search, Func<double, bool> answer)
    {
        for (IReadOnlyList<double> asked = search.Next(); asked.Count > 0; asked = search.Next())
        {
            foreach (double value in asked)
            {
                search.Take(value, answer(value));
            }
        }

        return search;
    }
}
