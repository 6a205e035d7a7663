using AxisSim.Core.Batches;
using AxisSim.Core.Questions;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Questions;

/// <summary>The search for an edge along one number, with answers made up.</summary>
public sealed class EdgeLineTests
{
    [Fact]
    public void The_answer_is_good_with_all_that_was_tried_below_and_the_next_is_bad() =>
        (from least in Gen.Int[1, 50]
         from span in Gen.Int[0, 3000]
         from edge in Gen.Int[0, 3100]
         from band in Gen.Int[1, 3000]
         from width in Gen.Int[0, 60]
         from own in Gen.Int[0, 3000]
         select (least, most: least + span, edge, band, width, own)).Sample(sample =>
         {
             bool Good(int value) => value <= sample.edge && !(value >= sample.band && value < sample.band + sample.width);
             EdgeLine search = Rising(sample.least, sample.most, sample.own);
             Run(search, Good);
             Assert.All(search.Answers, answer => Assert.True(answer.Key >= sample.least && answer.Key <= sample.most && (answer.Value == BatchEnd.Arrives) == Good(answer.Key)));
             if (search.Bad is { } bad)
             {
                 Assert.Equal(bad == sample.least ? null : bad - 1, search.Good);
             }
             else
             {
                 Assert.Equal(sample.most, search.Good);
             }

             Assert.All(search.Answers.Where(answer => answer.Key <= search.Good), answer => Assert.Equal(BatchEnd.Arrives, answer.Value));
             Assert.Contains(Math.Clamp(sample.own, sample.least, sample.most), search.Answers.Keys);
         });

    [Fact]
    public void A_single_edge_is_found_wherever_it_is() => Gen.Int[0, 5000].Sample(edge =>
    {
        EdgeLine search = Rising(1, 4000);
        Run(search, value => value <= edge);
        Assert.Equal(edge == 0 ? null : Math.Min(edge, 4000), search.Good);
        Assert.InRange(search.Answers.Count, 1, 70);
    });

    [Fact]
    public void A_band_that_the_scan_steps_over_is_found_by_the_look_below()
    {
        // The scan of 1 to 4000 asks at multiples of 333 from 667 on; the edge at 1400 lets it see 667, 1000 and 1333 only. The look back asks at eighths of 1400.
        EdgeLine search = Rising(1, 4000);
        Run(search, value => value <= 1400 && value is not (>= 850 and <= 920));
        Assert.Equal(849, search.Good);
        Assert.Contains(search.Answers, answer => answer.Value == BatchEnd.Arrives && answer.Key > search.Bad);
    }

    [Fact]
    public void Nothing_to_try_is_no_answer()
    {
        EdgeLine search = Rising(5, 4);
        Assert.Empty(search.Next());
        Assert.Null(search.Good);
    }

    [Fact]
    public void A_first_good_value_must_last_until_the_next_of_the_scan()
    {
        // 12 arrives by chance; from 31 on it lasts.
        var search = new EdgeLine(EdgeKind.FirstLasting, 1, 80, [10, 12, 20, 30, 40, 60, 80]);
        Run(search, value => value is 12 or >= 31);
        Assert.Equal((31, 30), (search.Good, search.Bad));
    }

    [Fact]
    public void Where_nothing_lasts_there_is_no_value_and_where_all_is_good_it_is_the_first()
    {
        var none = new EdgeLine(EdgeKind.FirstLasting, 1, 80, [10, 20, 40, 80]);
        Run(none, _ => false);
        Assert.Null(none.Good);
        var all = new EdgeLine(EdgeKind.FirstLasting, 1, 80, [10, 20, 40, 80]);
        Run(all, _ => true);
        Assert.Equal(1, all.Good);
    }

    [Fact]
    public void What_lies_beyond_the_scan_is_tried_only_when_nothing_fails_in_it()
    {
        var fails = new EdgeLine(EdgeKind.LastArriving, 0, 100, [10, 20], beyond: [50, 100]);
        Run(fails, value => value < 15);
        Assert.DoesNotContain(fails.Answers, answer => answer.Key > 20);
        var arrives = new EdgeLine(EdgeKind.LastArriving, 0, 100, [10, 20], beyond: [50, 100]);
        Run(arrives, value => value < 60);
        Assert.Equal(59, arrives.Good);
    }

    private static EdgeLine Rising(int least, int most, int? own = null)
    {
        IEnumerable<int> scan = Enumerable.Range(2, 11).Select(i => least + (int)((long)(most - least) * i / 12));
        return new EdgeLine(EdgeKind.LastArriving, least, most, own is { } one ? scan.Append(Math.Clamp(one, least, Math.Max(least, most))) : scan, lookBackParts: 8);
    }

    private static void Run(EdgeLine search, Func<int, bool> good)
    {
        int rounds = 0;
        for (IReadOnlyList<int> next = search.Next(); next.Count > 0; next = search.Next())
        {
            Assert.InRange(++rounds, 1, 40);
            foreach (int value in next)
            {
                search.Take(value, good(value) ? BatchEnd.Arrives : BatchEnd.Stalls);
            }
        }
    }
}
