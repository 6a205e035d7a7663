using AxisSim.Core.Batches;
using AxisSim.Core.Questions;

namespace AxisSim.Tests.Unit.Core.Questions;

/// <summary>The search on a logarithmic scale against questions whose answer is known.</summary>
public sealed class ValueSearchTests
{
    // Marks differ by 2.5 at the most, and there are 32 places from one to the next: 2.5^(1/32) = 1.029.
    private const double Tolerance = 0.03;

    [Theory]
    [InlineData(0.9)]
    [InlineData(0.31)]
    [InlineData(0.13)]
    [InlineData(1.45)]
    [InlineData(4.0)]
    [InlineData(1.0)]
    public void An_edge_is_found_to_the_tolerance(double edge)
    {
        ValueSearch search = Run(ValueSearch.Around(0.01, 1.0, 10.0), value => value <= edge);
        Assert.InRange(edge, search.Good!.Value, search.Bad!.Value);
        Assert.InRange(search.Bad.Value / search.Good.Value, 1.0, 1.0 + Tolerance);
    }

    [Fact]
    public void An_island_above_a_failure_does_not_count()
    {
        ValueSearch search = Run(ValueSearch.Around(0.01, 1.0, 10.0), value => value is <= 0.6 or >= 1.1);
        Assert.InRange(search.Good!.Value, 0.6 / (1.0 + Tolerance), 0.6);
    }

    [Fact]
    public void Where_all_is_good_it_ends_at_the_top_and_where_none_is_there_is_none()
    {
        ValueSearch good = Run(ValueSearch.Around(0.01, 1.0, 7.5), _ => true);
        Assert.Equal((7.5, null), (good.Good, good.Bad));
        ValueSearch bad = Run(ValueSearch.Around(0.01, 1.0, 7.5), _ => false);
        Assert.Null(bad.Good);
    }

    [Fact]
    public void Nothing_is_tried_outside_the_bounds_and_nothing_twice()
    {
        var tried = new List<double>();
        Run(ValueSearch.Around(0.4, 1.0, 1.2), value =>
        {
            tried.Add(value);
            return value < 0.41;
        });
        Assert.All(tried, value => Assert.InRange(value, 0.4, 1.2));
        Assert.Equal(tried.Count, tried.Distinct().Count());
        Assert.Empty(ValueSearch.Around(0.0, 0.0, 0.0).Line.Next());
        Assert.Empty(ValueSearch.Around(2.0, 1.0, 1.5).Line.Next());
    }

    private static ValueSearch Run(ValueSearch search, Func<double, bool> answer)
    {
        for (IReadOnlyList<int> asked = search.Line.Next(); asked.Count > 0; asked = search.Line.Next())
        {
            foreach (int place in asked)
            {
                search.Line.Take(place, answer(search.Row.Value(place)) ? BatchEnd.Arrives : BatchEnd.Stalls);
            }
        }

        return search;
    }
}
