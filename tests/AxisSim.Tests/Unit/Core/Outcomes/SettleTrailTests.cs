using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>The trail of settle errors against the law on all of them, and its memory.</summary>
public sealed class SettleTrailTests
{
    private const double Step = 50e-6;
    private const double RestSeconds = 0.2;
    private const int ExactSteps = 262_144;

    /// <summary>What the trail promises: the end of a cell, of which there are so many for each doubling of the time.</summary>
    private const double CellsOfDoubling = 16_384.0;

    [Theory]
    [InlineData(1)]
    [InlineData(3_999)]
    [InlineData(100_000)]
    [InlineData(ExactSteps)]
    public void While_it_is_short_it_is_the_law_to_the_last_bit(int count) => Compare(count, exact: true);

    [Theory]
    [InlineData(ExactSteps + 1)]
    [InlineData(ExactSteps + 2)]
    [InlineData(2 * ExactSteps)]
    [InlineData((2 * ExactSteps) + 3)]
    [InlineData(3_000_000)]
    public void When_it_is_long_it_is_late_by_a_cell_at_most_and_never_early(int count) => Compare(count, exact: false);

    [Fact]
    public void An_hour_of_steps_takes_some_megabytes()
    {
        const long Hour = 72_000_000, Most = 10_000_000;
        long before = GC.GetAllocatedBytesForCurrentThread();
        var trail = new SettleTrail(Step, RestSeconds);
        for (long i = 0; i < Hour; i++)
        {
            trail.Add(i % 7);
        }

        // 576 MB as an array; here 2 MB, asked for twice as the list doubles, and 0.26 MB for each of eight doublings and a bit.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, Most);
        Assert.Equal(Hour, trail.Count);
    }

    [Fact]
    public void A_long_watch_is_judged_alike_alone_and_in_a_batch_and_like_a_short_one()
    {
        MountSetup Watched(double seconds, double imbalance) => BenchmarkCase.Setup(BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 0.05, Ramp = Ramp.OfSeconds(0.3) } }, imbalance, 0.1, seconds, probe: true);
        BatchCase[] cases = [.. new[] { -4.0, -2.0, 0.0, 1.0, 4.0 }.SelectMany(imbalance => new[] { Watched(3.0, imbalance), Watched(30.0, imbalance) }).Select(setup => new BatchCase(setup, MountAxis.Polar))];
        BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling });
        for (int i = 0; i < cases.Length; i++)
        {
            AxisOutcome alone = MoveStudy.Run(cases[i].Setup, MountAxis.Polar, new MoveOptions { Explain = false }).Outcome;
            Assert.Equal(alone.Settling!.AgainstRestSeconds!.Value, results[i].SettleSeconds);
        }

        // The rest is that of other last instants, so the times differ in their last digits only.
        Assert.All(results.Chunk(2), pair => Assert.Equal(pair[0].SettleSeconds, pair[1].SettleSeconds, 1e-6));
    }

    [Fact]
    public void A_move_that_is_watched_for_minutes_asks_for_no_more_memory_than_one_that_is_watched_for_seconds()
    {
        // Ten minutes are twelve million steps: 96 MB, if each were kept. Six doublings come to 1.6 MB, the steps before them to 2 MB.
        const long Most = 15_000_000;
        Assert.InRange(Allocated(600.0) - Allocated(10.0), long.MinValue, Most);
    }

    private static long Allocated(double observe)
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Axis, 0.0, 0.02, observe);
        long before = GC.GetAllocatedBytesForCurrentThread();
        MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions { Explain = false });
        long taken = GC.GetAllocatedBytesForCurrentThread() - before;
        return taken;
    }

    private static void Compare(int count, bool exact)
    {
        var random = new Random(count);
        double[] errors = new double[count];
        var trail = new SettleTrail(Step, RestSeconds);
        for (int i = 0; i < count; i++)
        {
            // A decay over a fifth of the record, with a slow drift and noise that never grows.
            errors[i] = (Math.Exp(-5.0 * i / (0.2 * count)) * Math.Cos(0.02 * i)) + (1e-3 * i / count) + (1e-4 * random.NextDouble());
            if (i % 3 == 0)
            {
                trail.Add(errors[i]);
            }
            else if (i % 3 == 2)
            {
                trail.Add(errors.AsSpan(i - 1, 2));
            }
        }

        if (count % 3 == 2)
        {
            trail.Add(errors[^1]);
        }

        ReadOnlySpan<double> last = errors.AsSpan(Math.Max(0, count - (int)Math.Ceiling(RestSeconds / Step)));
        double rest = 0.0;
        foreach (double error in last)
        {
            rest += error;
        }

        rest /= last.Length;
        Assert.Equal(rest, trail.Rest);
        Assert.Equal(SettleLaw.Overshoot(errors, rest, 1.0), trail.Overshoot(rest, 1.0));
        Assert.Equal(SettleLaw.Overshoot(errors, rest, -1.0), trail.Overshoot(rest, -1.0));
        Assert.Equal(Math.Max(SettleLaw.Overshoot(last, rest, 1.0), SettleLaw.Overshoot(last, rest, -1.0)), trail.RestSwing(rest));
        foreach (double level in new[] { rest, 0.0 })
        {
            foreach (double tolerance in new[] { 2.0, 0.3, 1e-2, 1.1e-3, 3e-4, 1.2e-4, 9e-5, 1e-6 })
            {
                double? law = SettleLaw.Time(errors, Step, level, tolerance), told = trail.Time(level, tolerance);
                Assert.Equal(law is null, told is null);
                if (law is not { } time)
                {
                    continue;
                }

                bool kept = exact || time < ExactSteps * Step || time > ((count - 1) * Step) - RestSeconds;
                Assert.InRange(told!.Value, time, kept ? time : time + (time / CellsOfDoubling) + Step);
            }
        }
    }
}
