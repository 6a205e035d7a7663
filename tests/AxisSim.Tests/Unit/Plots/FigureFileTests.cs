using System.Globalization;
using System.Text;
using System.Xml.Linq;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using SkiaSharp;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Files of figures: the same bytes everywhere, well formed, small, and with units.</summary>
public sealed class FigureFileTests
{
    /// <summary>A browser opens a drawing of this size at once; a trace of 20,000 samples undecimated would take ten times as much.</summary>
    private const int LargestSvgBytes = 500_000;

    public static TheoryData<string> Names => [.. Figures.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_same_figure_gives_the_same_bytes(string name)
    {
        Assert.Equal(Figures.Png(Figures.Make(name)), Figures.Png(Figures.Make(name)));
        Assert.Equal(Figures.Svg(Figures.Make(name)), Figures.Svg(Figures.Make(name)));
        Assert.Equal(Figures.Pdf(Figures.Make(name)), Figures.Pdf(Figures.Make(name)));
    }

    [Theory]
    [InlineData("fr-FR")]
    [InlineData("ar-SA")]
    public void The_culture_changes_nothing(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            foreach (string name in Figures.Names)
            {
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
                byte[] png = Figures.Png(Figures.Make(name));
                byte[] svg = Figures.Svg(Figures.Make(name));
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Assert.Equal(png, Figures.Png(Figures.Make(name)));
                Assert.Equal(svg, Figures.Svg(Figures.Make(name)));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("good", "deg/s|N m|A|%|arcsec|s")]
    [InlineData("stalled", "deg/s|N m|A|%|deg|full steps|s")]
    [InlineData("curves", "N m|rpm|deg/s")]
    [InlineData("envelope", "deg/s|s")]
    [InlineData("growth", "s|1|MB")]
    [InlineData("map", "deg/s|s|%")]
    [InlineData("map-outcomes", "A|kg")]
    [InlineData("balance", "deg|N m")]
    public void Svg_is_well_formed_small_and_names_the_unit_of_each_axis(string name, string units)
    {
        byte[] bytes = Figures.Svg(Figures.Make(name));
        Assert.InRange(bytes.Length, 10_000, LargestSvgBytes);
        XElement root = XElement.Parse(Encoding.UTF8.GetString(bytes));
        string[] texts = [.. root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
        Assert.Contains(Figures.Title, texts);
        foreach (string unit in units.Split('|'))
        {
            Assert.Contains(texts, text => text.EndsWith(", " + unit, StringComparison.Ordinal));
        }

        Assert.DoesNotContain(texts, text => text.Contains("NaN", StringComparison.Ordinal) || text.Contains("xception", StringComparison.Ordinal));
    }

    [Fact]
    public void Svg_fits_the_text_of_a_viewer_without_the_font()
    {
        XElement root = XElement.Parse(Encoding.UTF8.GetString(Figures.Svg(Figures.Make("curves"))));
        Assert.All(root.Descendants().Where(e => e.Name.LocalName == "text" && e.Value.Length > 0), text => Assert.NotNull(text.Attribute("textLength")));
    }

    [Fact]
    public void Svg_dashes_are_as_long_as_those_of_the_picture()
    {
        // 4 and 2.4 widths of a line of 2.6 px: 10.4 and 6.24 px.
        string svg = Encoding.UTF8.GetString(Figures.Svg(Figures.Make("curves")));
        Assert.Contains("stroke-dasharray:10.4,6.24", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_scales()
    {
        IFigure figure = Figures.Make("curves");
        using SKBitmap one = SKBitmap.Decode(Figures.Png(figure));
        using SKBitmap two = SKBitmap.Decode(Figures.Png(figure, 2.0));
        Assert.Equal((figure.Width, figure.Height), (one.Width, one.Height));
        Assert.Equal((2 * one.Width, 2 * one.Height), (two.Width, two.Height));
        Assert.Throws<ArgumentOutOfRangeException>(() => FigureWriter.WritePng(figure, Stream.Null, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FigureWriter.WritePng(figure, Stream.Null, 0));
    }

    [Fact]
    public void A_pdf_is_one_page_with_the_font_inside()
    {
        string pdf = Encoding.Latin1.GetString(Figures.Pdf(Figures.Make("curves")));
        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        Assert.Contains("Inter", pdf, StringComparison.Ordinal);
        Assert.Contains("/Count 1", pdf, StringComparison.Ordinal);
    }
}
