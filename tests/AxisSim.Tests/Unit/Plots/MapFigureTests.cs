using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using AxisSim.Core.Batches;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Maps;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Invented;
using OxyPlot;
using SkiaSharp;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Maps: sizes of files, unlucky inputs, what is drawn where.</summary>
public sealed class MapFigureTests
{
    /// <summary>A picture of fixed pixels, hatching and an edge: what a browser opens at once.</summary>
    private const int LargestSmoothBytes = 1_000_000;

    /// <summary>Noise in every cell is the worst that compression and edges can meet.</summary>
    private const int LargestNoisyBytes = 15_000_000;

    [Fact]
    public void A_map_of_400_by_400_cells_is_a_small_drawing() => Assert.InRange(Figures.Svg(MapFigure.Create(SampleMaps.Margin(400, 400))).Length, 50_000, LargestSmoothBytes);

    [Fact]
    [Trait("speed", "slow")]
    [SuppressMessage("Security", "CA5394:Do not use insecure randomness", Justification = "Noise for a picture, the same every time.")]
    public void Noise_in_400_by_400_cells_is_a_drawing_that_can_be_opened()
    {
        var random = new Random(1);
        MapPicture noise = SampleMaps.Margin(400, 400);
        noise = noise with
        {
            Cells = [.. noise.Cells.Select(_ => (MapCell)random.Next(2))],
            Metric = noise.Metric! with { Values = [.. noise.Cells.Select(_ => random.NextDouble())] },
        };
        Assert.InRange(Figures.Svg(MapFigure.Create(noise)).Length, 50_000, LargestNoisyBytes);
    }

    public static TheoryData<string> UnluckyNames => [.. Unlucky.Keys];

    private static Dictionary<string, MapPicture> Unlucky { get; } = new(StringComparer.Ordinal)
    {
        ["one cell"] = SampleMaps.Margin(1, 1),
        ["one column"] = SampleMaps.Margin(1, 20),
        ["one row"] = SampleMaps.Margin(20, 1),
        ["all stall"] = SampleMaps.All(MapCell.Stalls, 20, 20, 1.0),
        ["all arrive, one value"] = SampleMaps.All(MapCell.Arrives, 20, 20, 1.0),
        ["all arrive, no value"] = SampleMaps.All(MapCell.Arrives, 20, 20, double.NaN),
        ["infinite values"] = SampleMaps.All(MapCell.Arrives, 20, 20, double.PositiveInfinity),
        ["nothing computed"] = SampleMaps.All(MapCell.NotComputed, 3, 3, double.NaN),
        ["no point"] = SampleMaps.Margin(20, 20) with { Point = null },
        ["point outside"] = SampleMaps.Margin(20, 20) with { Point = new MapPoint(99, 2, "far away") },
        ["point that is no number"] = SampleMaps.Margin(20, 20) with { Point = new MapPoint(double.NaN, 2, "nowhere") },
        ["point at the corner"] = SampleMaps.Margin(20, 20) with { Point = new MapPoint(5, 6, "at the corner of the map") },
        ["tiny keys"] = Scaled(1e-9),
        ["huge keys"] = Scaled(1e12),
        ["huge values"] = SampleMaps.Margin(20, 20) with { Metric = new MapTones("Figure, s", [.. Enumerable.Range(0, 400).Select(i => i * 1e300)]) },
        ["wide logarithm"] = SampleMaps.Margin(20, 20) with { X = new MapAxis("Key, s", [.. Enumerable.Range(0, 20).Select(i => Math.Pow(10.0, (10 * i) - 100))], true), Point = null },
        ["narrow logarithm"] = SampleMaps.Margin(20, 20) with { X = new MapAxis("Key, s", [.. Enumerable.Range(0, 20).Select(i => 1.0 + (0.001 * i))], true), Point = null },
        ["long words"] = SampleMaps.Margin(20, 20) with
        {
            Title = Long, Sentence = Long, X = new MapAxis(Long + ", deg/s", SampleMaps.Margin(20, 20).X.Values), Y = new MapAxis(Long + ", s", SampleMaps.Margin(20, 20).Y.Values, true),
            Metric = SampleMaps.Margin(20, 20).Metric! with { Title = Long + ", %" }, Point = new MapPoint(4.9, 5, Long),
        },
    };

    private const string Long = "a heavy reflector of Harrow Fell Observatory with a long dew shield, a camera and a second guide telescope beside it";

    [Theory]
    [MemberData(nameof(UnluckyNames))]
    public void Unlucky_maps_are_drawn(string name)
    {
        IFigure figure = MapFigure.Create(Unlucky[name]);
        Assert.NotEmpty(Figures.Png(figure));
        string svg = Encoding.UTF8.GetString(Figures.Svg(figure));
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("\u221e", svg, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(UnluckyNames))]
    public void No_text_leaves_the_sheet_or_loses_its_unit(string name)
    {
        IFigure figure = MapFigure.Create(Unlucky[name]);
        using Texts texts = new();
        figure.Draw(texts);
        Assert.Null(texts.Fault(figure));
        Assert.Contains(texts.Boxes, box => box.Text.EndsWith(", s", StringComparison.Ordinal));
    }

    [Fact]
    public void Lists_that_do_not_fit_the_grid_are_refused_in_words()
    {
        MapPicture map = SampleMaps.Margin(4, 3);
        Assert.Contains("4 by 3", Assert.Throws<ArgumentException>(() => MapFigure.Create(map with { Cells = [.. map.Cells.Skip(1)] })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => MapFigure.Create(map with { Metric = new MapTones("Margin, %", [1.0]) }));
        Assert.Throws<ArgumentException>(() => MapFigure.Create(map with { X = new MapAxis("Rate, deg/s", [4, 3, 2, 1]) }));
    }

    [Fact]
    public void Values_are_shown_only_where_the_move_arrives()
    {
        // Stalled cells hold values beyond all others: neither the scale nor the tones may follow them.
        MapPicture map = SampleMaps.Margin(20, 20);
        MapPicture wild = map with { Metric = map.Metric! with { Values = [.. map.Metric.Values.Select((value, i) => map.Cells[i] == MapCell.Arrives ? value : 1e6)] } };
        Assert.Equal(Figures.Png(MapFigure.Create(map)), Figures.Png(MapFigure.Create(wild)));
    }

    [Fact]
    public void A_cell_has_its_tone_where_its_keys_say()
    {
        // Three columns on a logarithmic axis, two rows; the lower right cell holds the greatest value.
        MapPicture map = SampleMaps.Margin(3, 2) with
        {
            X = new MapAxis("Rate, deg/s", [1, 10, 100], true), Y = new MapAxis("Ramp, s", [1, 2]), Point = null,
            Cells = [.. Enumerable.Repeat(MapCell.Arrives, 6)], Metric = new MapTones("Margin, %", [0, 0, 100, 0, 0, 0]),
        };
        IFigure figure = MapFigure.Create(map);
        using SKBitmap bitmap = SKBitmap.Decode(Figures.Png(figure));
        int bottom = bitmap.Height - 100, top = bottom - 400;
        double width = bitmap.Width - Panel.LeftMargin - 150;
        SKColor At(double share, int y) => bitmap.GetPixel((int)(Panel.LeftMargin + (share * width)), y);
        OxyColor palest = Palette.Tone(0), darkest = Palette.Tone(1);
        Assert.Equal((darkest.R, darkest.G, darkest.B), (At(5.0 / 6.0, bottom).Red, At(5.0 / 6.0, bottom).Green, At(5.0 / 6.0, bottom).Blue));
        Assert.Equal((palest.R, palest.G, palest.B), (At(0.5, bottom).Red, At(0.5, bottom).Green, At(0.5, bottom).Blue));
        Assert.Equal((palest.R, palest.G, palest.B), (At(5.0 / 6.0, top).Red, At(5.0 / 6.0, top).Green, At(5.0 / 6.0, top).Blue));
    }

    [Fact]
    public void The_scale_of_tones_is_seen_beside_the_map()
    {
        IFigure figure = MapFigure.Create(SampleMaps.Margin(20, 20));
        int left = (int)figure.Width - 110, middle = (int)figure.Height - 350;
        byte[] png = Figures.Png(figure);
        Assert.InRange(Figures.Ink(png, new SKRectI(left, middle - 250, (int)figure.Width, middle + 250)), 500, 50_000);

        // Its frame at the lower end is there as well, darker than the palest tone (red 228) above it: nothing is cut off.
        using SKBitmap bitmap = SKBitmap.Decode(png);
        Assert.Contains(Enumerable.Range(middle + 250, 60), y => bitmap.GetPixel((int)figure.Width - 120, y).Red is > 100 and < 215);
    }

    [Fact]
    public void The_drawing_says_in_words_what_it_shows()
    {
        XElement root = XElement.Parse(Encoding.UTF8.GetString(Figures.Svg(MapFigure.Create(SampleMaps.Margin(40, 30)))));
        string description = root.Elements().Single(e => e.Name.LocalName == "desc").Value;
        Assert.Contains("1200 points", description, StringComparison.Ordinal);
        Assert.Contains("stalls", description, StringComparison.Ordinal);
        Assert.Contains("Torque margin, %", description, StringComparison.Ordinal);
        Assert.Contains("this scenario: 2.5 deg/s, 2 s; the cell there: arrives", description, StringComparison.Ordinal);
    }

    [Fact]
    public void Legends_name_each_kind_that_is_there_and_no_other()
    {
        Assert.Equal(
            ["arrives", "stalls", "clutch slips", "does not settle", "no finite result", "too fast to simulate", "no valid scenario", "not computed", "edge of arriving", "marked point"],
            Legend(SampleMaps.EveryKind()));
        Assert.Equal(["stalls", "marked point"], Legend(Unlucky["all stall"]));
        Assert.Equal(["arrives, no figure", "marked point"], Legend(Unlucky["all arrive, no value"]));
    }

    [Fact]
    public void Each_end_of_a_case_has_its_cell() =>
        Assert.All(Enum.GetValues<BatchEnd>(), end => Assert.Equal(end.ToString(), MapPicture.CellOf(end).ToString()));

    [Theory]
    [InlineData(0.5, 5.0, 8, "0.5 0.7 1 2 3 5")]
    [InlineData(0.1, 100.0, 4, "0.1 1 10 100")]
    [InlineData(0.1, 6.0, 10, "0.1 0.2 0.3 0.5 0.7 1 2 3 5")]
    [InlineData(1.0, 1.02, 5, "1 1.005 1.01 1.015 1.02")]
    [InlineData(1e-9, 1e9, 7, "1E-09 1E-06 0.001 1 1000 1E+06 1E+09")]
    public void Logarithmic_ticks_are_round_and_fill_the_axis(double from, double to, int most, string ticks) =>
        Assert.Equal(ticks, string.Join(' ', Ticks.Logarithmic(from, to, most).Select(tick => tick.ToString("G6", CultureInfo.InvariantCulture))));

    /// <summary>Both keys multiplied.</summary>
    private static MapPicture Scaled(double factor)
    {
        MapPicture map = SampleMaps.Margin(20, 20);
        return map with
        {
            X = map.X with { Values = [.. map.X.Values.Select(v => v * factor)] },
            Y = map.Y with { Values = [.. map.Y.Values.Select(v => v * factor)] },
            Point = new MapPoint(2.5 * factor, 2.0 * factor, "this scenario"),
        };
    }

    private static string[] Legend(MapPicture map) => [.. MapPanel.Create(new CellGrid(map)).Legend.Select(entry => entry.Text)];
}
