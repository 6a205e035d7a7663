using AxisSim.Cli;
using AxisSim.Plots;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Unit.Report.Pages;
using SkiaSharp;

namespace AxisSim.Tests.Docs;

/// <summary>The pictures of the guide are those that the program makes now; AXISSIM_REFRESH_GOLDEN=1 makes them again.</summary>
[Trait("speed", "slow")]
public sealed class PictureTests
{
    /// <summary>
    /// After a stall the motion is chaotic: another processor's last bit of a sine moves the fine wiggles. So where the bytes differ, a share of
    /// the pixels may differ; a line, a number or a panel that moved is far more than that.
    /// </summary>
    private const double PixelShare = 0.005;

    private const int PixelDifference = 48;

    private static readonly string[] SheetPictures = ["heavy-reflector-sheet.png", "heavy-reflector-sheet-2.png"];

    /// <summary>Holds measured times, so it is made by hand (docs/performance.md says how) and only asked to be there.</summary>
    private const string MeasuredPicture = "growth.png";
    private const double SheetScale = 1.4;

    private static readonly string[] Simulate = ["simulate"];

    private static readonly string[] Reduction = ["reduction"];

    // As docs/envelope.md shows it.
    private static readonly string[] Envelope =
    [
        "envelope", "--ramp", "0.1..0.8 s", "--points", "4", "--for", "polar.drive.slew_current=0.8,0.9,1 A", "--set", "move.end_polar=-15 deg", "--set", "move.end_declination=20 deg",
    ];

    // As docs/maps.md shows it.
    private static readonly string[] Map = ["map", "--x", "polar.motion.ramp_time=0.2..2 s", "--y", "polar.motion.slew_rate=1..6 deg/s", "--grid", "33,25"];

    // As docs/tutorial-compare.md shows it.
    private static readonly string[] Compare =
    [
        "compare", "--motors", Repository.PathOf("catalogues", "motors.csv"), "--ratios", "216,360", "--voltages", "12,24 V",
        "--set", "polar.drive.microsteps=16", "--set", "move.end_polar=-15 deg", "--set", "move.end_declination=20 deg",
    ];

    public static TheoryData<string, string, string[]> Pictures => new()
    {
        { "heavy-reflector-stalls", "polar-move", Simulate },
        { "heavy-reflector-stalls", "polar-torque-speed", Simulate },
        { "heavy-reflector-stalls", "polar-envelope", Envelope },
        { "heavy-reflector-stalls", "map", Map },
        { "heavy-reflector-stalls", "polar-comparison", Compare },
        { "heavy-reflector-rescued", "polar-move", Simulate },
        { "heavy-reflector", "polar-reduction", Reduction },
    };

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_is_not_stale(string scenario, string figure, string[] command)
    {
        string folder = Directory.CreateTempSubdirectory("axissim-picture-").FullName;
        try
        {
            Program.Run([.. command, Repository.PathOf("scenarios", scenario + ".toml"), "--axis", "polar", "--out", folder], TextWriter.Null, TextWriter.Null);
            byte[] made = File.ReadAllBytes(Path.Combine(folder, figure + ".png"));
            string path = Repository.PathOf("docs", "images", $"{scenario}-{figure}.png");
            if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
            {
                File.WriteAllBytes(path, made);
            }

            byte[] stored = File.ReadAllBytes(path);
            Assert.True(made.AsSpan().SequenceEqual(stored) || DifferentShare(made, stored) <= PixelShare, $"{path} is stale; run the tests with AXISSIM_REFRESH_GOLDEN=1 and look at it");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The command writes the sheet as PDF; the guide shows the same pages as pictures.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void The_picture_of_the_sheet_is_not_stale(int side)
    {
        using MemoryStream stream = new();
        FigureWriter.WritePng(SheetFigure.Both(ShippedReports.Page("heavy-reflector").Sheet)[side], stream, SheetScale);
        byte[] made = stream.ToArray();
        string path = Repository.PathOf("docs", "images", SheetPictures[side]);
        if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
        {
            File.WriteAllBytes(path, made);
        }

        byte[] stored = File.ReadAllBytes(path);
        Assert.True(made.AsSpan().SequenceEqual(stored) || DifferentShare(made, stored) <= PixelShare, $"{path} is stale; run the tests with AXISSIM_REFRESH_GOLDEN=1 and look at it");
    }

    [Fact]
    public void Every_picture_of_the_guide_is_checked()
    {
        string[] known = [.. Pictures.Select(row => $"{row[0]}-{row[1]}.png").Concat(SheetPictures).Append(MeasuredPicture).Order(StringComparer.Ordinal)];
        Assert.Equal(known, Directory.GetFiles(Repository.PathOf("docs", "images")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
    }

    private static double DifferentShare(byte[] made, byte[] stored)
    {
        using SKBitmap a = SKBitmap.Decode(made), b = SKBitmap.Decode(stored);
        if (a.Width != b.Width || a.Height != b.Height)
        {
            return 1.0;
        }

        int different = a.Pixels.Zip(b.Pixels).Count(pair => Math.Abs(pair.First.Red - pair.Second.Red) + Math.Abs(pair.First.Green - pair.Second.Green) + Math.Abs(pair.First.Blue - pair.Second.Blue) > PixelDifference);
        return (double)different / (a.Width * a.Height);
    }
}
