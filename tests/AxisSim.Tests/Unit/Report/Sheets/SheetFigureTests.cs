using System.Text;
using System.Text.RegularExpressions;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Plots;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Invented;
using AxisSim.Tests.Unit.Plots;
using AxisSim.Tests.Unit.Report.Pages;

namespace AxisSim.Tests.Unit.Report.Sheets;

/// <summary>The sheet on its paper: two sides of A4, with all its content and nothing cut.</summary>
public sealed class SheetFigureTests
{
    /// <summary>7 pt: what is read outdoors must not be smaller (common practice for labels, no source).</summary>
    private const double LeastTextPixels = 7.0 * 96.0 / 72.0;

    /// <summary>The PDF library gives the page in whole points.</summary>
    private const double WholePoint = 0.5;

    public static TheoryData<string> Names => ShippedReports.Names;

    [Theory]
    [MemberData(nameof(Names))]
    [Trait("speed", "slow")]
    public void A_shipped_scenario_fits_and_is_legible(string name) => Check(ShippedReports.Page(name).Sheet, LeastTextPixels);

    [Fact]
    public void Invented_sheets_fit()
    {
        Check(SheetBuilder.Of(SampleSheets.Of(SampleReports.Arriving(), SampleSheets.Intricate)), LeastTextPixels);
        Check(SheetBuilder.Of(SampleSheets.Of(SampleReports.Stalling(), SampleSheets.Intricate)), LeastTextPixels);
        Check(SheetBuilder.Of(SampleSheets.Of(SampleReports.SlippingAndSwinging())), LeastTextPixels);
    }

    [Fact]
    public void Long_names_and_many_stages_are_set_smaller_not_cut()
    {
        static AxisModel Long(AxisModel model) => SampleSheets.Intricate(model) with
        {
            Train = model.Train with
            {
                Stages = [.. Enumerable.Range(1, 6).Select(i => new GearStage { Name = $"stage {i} with a long name", DrivenTeeth = 1009 + i, DrivingTeeth = i % 2 == 0 ? 1 : 997 })],
            },
        };
        SheetInput input = SampleSheets.Of(SampleReports.Stalling(), Long);
        Check(SheetBuilder.Of(input with { Name = string.Join(' ', Enumerable.Repeat("a long name", 12)) }), 0.0);
    }

    [Fact]
    public void Paper_is_two_sides_of_a4_and_the_same_at_every_run()
    {
        SettingsSheet sheet = SheetBuilder.Of(SampleSheets.Of(SampleReports.Stalling()));
        byte[] first = Pdf(sheet), again = Pdf(sheet);
        Assert.Equal(first, again);
        string text = Encoding.Latin1.GetString(first);
        Assert.Equal(2, Regex.Count(text, @"/Type\s*/Page\b"));
        Match[] boxes = Regex.Matches(text, @"/MediaBox\s*\[0 0 ([0-9.]+) ([0-9.]+)\]").ToArray();
        Assert.Equal(2, boxes.Length);
        Assert.All(boxes, box =>
        {
            Assert.Equal(595.276, double.Parse(box.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), WholePoint);
            Assert.Equal(841.89, double.Parse(box.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture), WholePoint);
        });
    }

    private static byte[] Pdf(SettingsSheet sheet)
    {
        using MemoryStream stream = new();
        FigureWriter.WritePdf(SheetFigure.Both(sheet), stream);
        return stream.ToArray();
    }

    private static void Check(SettingsSheet sheet, double leastText)
    {
        string[] numbers =
        [
            .. sheet.Notes, .. sheet.Settings.SelectMany(group => group.Rows.SelectMany(row => row.Values)),
            .. sheet.Typed is { } typed ? [typed.Title, typed.Verdict, .. typed.Notes, .. typed.Settings.Concat(typed.Results).SelectMany(row => row.Values.Append(row.Name))] : Array.Empty<string>(),
        ];
        string[] powerOn = [.. sheet.Checks, .. sheet.Steps.SelectMany(step => new[] { step.Title, step.Do, step.StopIf }.Concat(step.Expected.SelectMany(row => row.Values.Append(row.Name))))];
        foreach ((SheetFigure figure, string[] own) in SheetFigure.Both(sheet).Zip([numbers, powerOn]))
        {
            using Texts texts = new();
            figure.Draw(texts);
            Assert.Null(texts.Fault(figure));
            Assert.True(figure.TextSize(texts) >= leastText, $"text of {figure.TextSize(texts)} px");

            // Words in the order in which they are set, whatever lines they were broken into.
            string drawn = Plain(string.Join(' ', texts.Boxes.Select(box => box.Text)));
            string[] wanted = [sheet.Title, sheet.Verdict, sheet.Caution, sheet.Provenance, .. sheet.Axes, .. own];
            Assert.All(wanted, text => Assert.Contains(Plain(text), drawn, StringComparison.Ordinal));
            if (sheet.Warning is { } warning)
            {
                Assert.StartsWith(Plain(warning), drawn, StringComparison.Ordinal);
            }
        }
    }

    private static string Plain(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
}
