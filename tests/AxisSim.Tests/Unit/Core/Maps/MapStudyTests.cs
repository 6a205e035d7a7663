using AxisSim.Core.Maps;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Maps;
using AxisSim.Tests.Unit.Files.Maps;

namespace AxisSim.Tests.Unit.Core.Maps;

/// <summary>Maps of shipped scenarios against the runs that they stand for.</summary>
[Trait("speed", "slow")]
public sealed class MapStudyTests
{
    private static readonly string Stalls = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"));

    // The hard part of the move is its start: six degrees instead of seventy, and a short watch.
    private static readonly string[] Shorter = ["move.end_polar=-11 deg", "move.observe=2.5 s"];

    [Fact]
    public void The_adaptive_grid_has_the_ends_of_the_full_grid_at_a_part_of_the_runs()
    {
        MapCells full = Run("polar.motion.ramp_time=0.2..1.8 s", "polar.motion.slew_rate=2..6 deg/s", 33, 25, MapMetric.Outcome, full: true);
        MapCells adaptive = Run("polar.motion.ramp_time=0.2..1.8 s", "polar.motion.slew_rate=2..6 deg/s", 33, 25, MapMetric.Outcome, full: false);
        Assert.Equal(FakeMap.Ends(full), FakeMap.Ends(adaptive));
        Assert.InRange(full.CountOf(MapEnd.Stalls), 1, full.Count - 1);
        Assert.InRange(adaptive.ComputedCount(), 1, full.Count / 2);
        Assert.All(Enumerable.Range(0, full.Count).Where(adaptive.IsComputed), place => Assert.Equal(full[place], adaptive[place]));
    }

    [Fact]
    public void Settling_duration_and_temperature_are_those_of_single_moves()
    {
        MapCells cells = Run("polar.motion.ramp_time=0.3..1.5 s", "polar.motion.slew_rate=3..5 deg/s", 3, 2, MapMetric.Settle, full: true, MountAxis.Polar, MountAxis.Declination);
        var variants = Variants("polar.motion.ramp_time=0.3..1.5 s", "polar.motion.slew_rate=3..5 deg/s", 3, 2);
        for (int place = 0; place < cells.Count; place++)
        {
            MountSetup setup = variants.Setup(place / 2, place % 2, out _)!;
            AxisOutcome[] both = [.. new[] { MountAxis.Polar, MountAxis.Declination }.Select(axis => MoveStudy.Run(setup, axis, new MoveOptions { Explain = false }).Outcome)];
            Assert.Equal(both.All(one => one.Verdict == Verdict.Arrives), cells.End(place) == MapEnd.Arrives);
            Assert.Equal(both[0].SlewSeconds, cells[place].SlewSeconds);

            // A move that fails ends there: it has no temperature after slewing without end.
            bool whole = both.All(one => one.Verdict is Verdict.Arrives or Verdict.DoesNotSettle);
            Assert.Equal(whole ? both.Max(one => one.Power.ContinuousCelsius) : double.NaN, cells[place].ContinuousCelsius);
            double settles = both.Max(one => one.Settling?.AgainstRestSeconds ?? double.NaN);
            Assert.Equal(both.Any(one => one.Settling?.AgainstRestSeconds is null) ? double.NaN : settles, cells[place].SettleSeconds);
            Assert.Equal(cells[place].SlewSeconds + cells[place].SettleSeconds, cells[place].DurationSeconds);
        }
    }

    [Fact]
    public void Margins_are_those_of_single_moves_and_curves_are_shared()
    {
        MapCells cells = Run("polar.motion.slew_rate=3..4 deg/s", "polar.motion.ramp_time=0.3..1.5 s", 2, 3, MapMetric.Margin, full: true);
        var variants = Variants("polar.motion.slew_rate=3..4 deg/s", "polar.motion.ramp_time=0.3..1.5 s", 2, 3);
        var store = new PullOutStore();
        for (int place = 0; place < cells.Count; place++)
        {
            MountSetup setup = variants.Setup(place / 3, place % 3, out _)!;
            double expected = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions { Explain = false }).Outcome.Margin.Value;
            Assert.Equal(expected, cells[place].TorqueMargin);
            Assert.Equal(expected, CurveStudy.MarginOf(setup, MountAxis.Polar, store).Value);
        }

        // Two slew rates, one mode: the ramp changes nothing of the curves, but for the last digit of the peak speed.
        Assert.InRange(store.Made, 2, cells.Count - 1);
    }

    private static ScenarioVariants Variants(string x, string y, int columns, int rows) =>
        new(Stalls, "m.toml", Shorter, VariantTests.Range("--x", x, columns), VariantTests.Range("--y", y, rows));

    private static MapCells Run(string x, string y, int columns, int rows, MapMetric metric, bool full, params MountAxis[] axes)
    {
        ScenarioVariants variants = Variants(x, y, columns, rows);
        var cells = new MapCells(columns, rows, metric);
        MapStudy.Run(cells, new MapOptions
        {
            Axes = axes.Length == 0 ? [MountAxis.Polar] : axes,
            Full = full,
            Setup = place => variants.Setup(place / rows, place % rows, out _),
        });
        return cells;
    }
}
