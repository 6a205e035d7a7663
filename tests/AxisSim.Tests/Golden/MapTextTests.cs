using AxisSim.Cli.Text.Maps;
using AxisSim.Cli.Text;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Tests.Golden;

/// <summary>The page of a map word for word, under several cultures, from cells that are made by hand.</summary>
public sealed class MapTextTests
{
    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void A_point_that_stalls(string culture) => Check("map-stalls.txt", culture, () => Report(Ramp(0.4), Rate(5.0), MapMetric.Outcome, full: false, OwnStalls));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_point_that_arrives_near_the_edge(string culture) => Check("map-arrives.txt", culture, () => Report(Ramp(0.9), Rate(4.0), MapMetric.Settle, full: true, new CellResult(MoveEnd.Arrives, double.NaN, 12.5, 1.234, 88.8, double.NaN)));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_map_without_a_point_of_its_own(string culture) => Check("map-no-point.txt", culture, () => Report(OwnValue.None, Rate(4.0), MapMetric.Margin, full: true, null));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_point_off_the_map(string culture) => Check("map-off.txt", culture, () => Report(Ramp(5.0), Rate(4.0) with { ByDefault = true }, MapMetric.Temperature, full: true, OwnArrives));

    private static CellResult OwnStalls => new(MoveEnd.Stalls, 0.0528, 14.4, double.NaN, double.NaN, double.NaN);

    private static CellResult OwnArrives => new(MoveEnd.Arrives, double.NaN, 14.4, 0.8, 141.2, double.NaN);

    private static OwnValue Ramp(double seconds) => new(seconds, seconds, ByDefault: false);

    private static OwnValue Rate(double degrees) => new(degrees, degrees * Math.PI / 180.0, ByDefault: false);

    // Paper: it stalls where ramp time x 5 < slew rate, cells of the lowest ramp and the highest rates are not valid.
    private static MapReport Report(OwnValue ramp, OwnValue rate, MapMetric metric, bool full, CellResult? own)
    {
        double[] ramps = [0.2, 0.3, 0.4, 0.6, 0.8, 1.2, 1.6, 2.4], rates = [1, 2, 3, 4, 5, 6];
        MapHeader header = new()
        {
            Program = "1.2.3",
            Scenario = "heavy reflector, stalls",
            File = "mount.toml",
            Settings = ["polar.worm.teeth=150"],
            Notes = [],
            Sha256 = new string('a', 64),
            Axes = ["polar", "declination"],
            X = new MapKey("polar.motion.ramp_time", "s", "s", true, ramps, ramps, ramp),
            Y = new MapKey("polar.motion.slew_rate", "deg/s", "rad_per_s", false, rates, [.. rates.Select(one => one * Math.PI / 180.0)], rate),
            Metric = metric,
            Full = full,
            StepSeconds = 50e-6,
            HasOwnPoint = own is not null,
        };
        MapCells cells = header.NewCells();
        var invalid = new FirstMessage();
        for (int place = 0; place < cells.Count; place++)
        {
            double x = ramps[place / cells.Rows], y = rates[place % cells.Rows];
            MoveEnd end = x < 0.25 && y > 4.5 ? MoveEnd.NotValid : 5.0 * x < y ? MoveEnd.Stalls : MoveEnd.Arrives;
            if (full || place % 2 == 0)
            {
                bool arrives = end == MoveEnd.Arrives;
                cells.Set(place, new CellResult(end, arrives ? double.NaN : 0.05, 70.0 / y, arrives ? 2.0 - (0.5 * x) : double.NaN, arrives ? 60.0 + (10.0 * y) : double.NaN, end == MoveEnd.NotValid ? double.NaN : 1.0 - (y / (8.0 * x))));
            }
            else
            {
                cells.Fill(place, end);
            }
        }

        invalid.Take(4, "polar.drive.microsteps: found 64 microsteps (at the slew rate 6000 full steps/s x 64 = 384000 pulses/s, above max_pulse_rate of 200000 pulses/s); allowed: at most 33 microsteps at this slew rate");
        if (own is { } result)
        {
            cells.Set(cells.OwnPlace, result);
        }

        var map = new MapReport(header, cells, invalid);
        return new MapReport(header, cells, invalid)
        {
            Tries = [.. map.Distances.Where(edge => own?.End == MoveEnd.Stalls && edge.BeyondEnd == MoveEnd.Arrives)
                .Select(edge => new MapTry(edge.Along, edge.BeyondValue, new TypedLine([Core.Sky.MountAxis.Polar, Core.Sky.MountAxis.Declination], [$"{map.Key(edge.Along).Key}={map.Key(edge.Along).Text(edge.BeyondValue)}"])))],
        };
    }

    private static void Check(string name, string culture, Func<MapReport> report)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            MapPresenter.Write(new Page(writer, colour: false), report(), ["out/map.csv", "out/map.json"]);
            return writer.ToString();
        });
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.DoesNotContain("E-0", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
