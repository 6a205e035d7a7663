using AxisSim.Core.Envelopes;
using CsCheck;

namespace AxisSim.Tests.Unit.Envelopes;

/// <summary>The search for the greatest safe value, with answers made up.</summary>
public sealed class RateSearchTests
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
             var search = new RateSearch(sample.least, sample.most, sample.own);
             Run(search, Good);
             Assert.All(search.Answers, answer => Assert.True(answer.Key >= sample.least && answer.Key <= sample.most && answer.Value == Good(answer.Key)));
             if (search.FirstBad is { } bad)
             {
                 Assert.Equal(bad == sample.least ? null : bad - 1, search.LastGood);
             }
             else
             {
                 Assert.Equal(sample.most, search.LastGood);
             }

             Assert.All(search.Answers.Where(answer => answer.Key <= search.LastGood), answer => Assert.True(answer.Value));
             Assert.Contains(Math.Clamp(sample.own, sample.least, sample.most), search.Answers.Keys);
         });

    [Fact]
    public void A_single_edge_is_found_wherever_it_is() => Gen.Int[0, 5000].Sample(edge =>
    {
        var search = new RateSearch(1, 4000);
        Run(search, value => value <= edge);
        Assert.Equal(edge == 0 ? null : Math.Min(edge, 4000), search.LastGood);
        Assert.InRange(search.Answers.Count, 1, 70);
    });

    [Fact]
    public void A_band_that_the_scan_steps_over_is_found_by_the_look_below()
    {
        // The scan of 1 to 4000 asks at multiples of 166.6 from 334 on; the edge at 700 lets it see 334, 500 and 667 only. The look below asks at twelfths of 700.
        var search = new RateSearch(1, 4000);
        Run(search, value => value <= 700 && value is not (>= 400 and <= 460));
        Assert.Equal(399, search.LastGood);
        Assert.Contains(search.Answers, answer => answer.Value && answer.Key > search.FirstBad);
    }

    [Fact]
    public void Nothing_to_try_is_no_answer()
    {
        var search = new RateSearch(5, 4);
        Assert.Empty(search.Next());
        Assert.Null(search.LastGood);
    }

    private static void Run(RateSearch search, Func<int, bool> good)
    {
        int rounds = 0;
        for (IReadOnlyList<int> next = search.Next(); next.Count > 0; next = search.Next())
        {
            Assert.InRange(++rounds, 1, 40);
            foreach (int value in next)
            {
                search.Take(value, good(value));
            }
        }
    }
}
