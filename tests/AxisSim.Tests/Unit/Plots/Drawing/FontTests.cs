using System.Security.Cryptography;
using AxisSim.Plots.Drawing;
using SkiaSharp;

namespace AxisSim.Tests.Unit.Plots.Drawing;

/// <summary>Text comes from the font in the assembly and from nowhere else.</summary>
public sealed class FontTests
{
    /// <summary>A tenth of what the title of 25 px takes: an empty box or a blank text stays below.</summary>
    private const int LeastTitleInk = 300;

    private static readonly SKRectI s_title = new(20, 18, 700, 52);

    [Theory]
    [InlineData("Inter-Regular.ttf", "41ab0f707a2bfab8133ccdfcdab52282f5f79e5751f43a264805451c7bb95fb8")]
    [InlineData("Inter-Bold.ttf", "790c108befe859dac2ddbd20af3fbb6917c601b3d544c8a05761519f3b5508fe")]
    public void The_font_is_the_unmodified_one(string name, string sha256)
    {
        using Stream stream = InterFont.Open(name);
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(stream)));
    }

    [Fact]
    public void Text_is_drawn_with_the_embedded_faces()
    {
        Assert.Equal("Inter", InterFont.Face(TextStyle.Regular).FamilyName);
        Assert.True(InterFont.Face(TextStyle.Bold).IsBold);
        int with = Figures.Ink(Figures.Png(Figures.Make("curves")), s_title);
        int without = Figures.Ink(Figures.Png(Figures.Make("curves", string.Empty)), new SKRectI(20, 0, 700, 20));
        Assert.InRange(with, LeastTitleInk, int.MaxValue);
        Assert.Equal(0, without);
    }

    [Fact]
    public void Every_sign_in_use_has_a_glyph()
    {
        const string signs = "0123456789.,:;%/()\u00b0\u00b1\u2212\u2013\u221a\u00b2\u03bc\u03a9\u03c4\u00d7";
        Assert.True(InterFont.Face(TextStyle.Regular).ContainsGlyphs(signs));
        Assert.True(InterFont.Face(TextStyle.Bold).ContainsGlyphs(signs));
    }

    [Fact]
    public void A_text_is_as_wide_at_every_scale()
    {
        using InterRenderContext one = new();
        using InterRenderContext two = new() { DpiScale = 2 };
        double width = one.MeasureText("Torque at the motor shaft, N m", null, 16, 400).Width;

        // Widths are floats of the font's own units: equal to a part in a million.
        Assert.Equal(width, two.MeasureText("Torque at the motor shaft, N m", null, 16, 400).Width, 1e-4 * width);
    }

    [Fact]
    public void A_long_verdict_is_broken_into_lines_that_fit()
    {
        using InterRenderContext context = new();
        string verdict = string.Join(' ', Enumerable.Repeat("stalls while speeding up", 30));
        IReadOnlyList<string> lines = TextStyle.Wrap(context, verdict, TextStyle.VerdictSize, TextStyle.Regular, 1152);
        Assert.True(lines.Count > 3);
        Assert.All(lines, line => Assert.True(context.MeasureText(line, null, TextStyle.VerdictSize, TextStyle.Regular).Width <= 1152));
        Assert.Equal(verdict, string.Join(' ', lines));
    }
}
