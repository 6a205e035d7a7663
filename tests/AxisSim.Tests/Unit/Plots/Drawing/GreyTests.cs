using AxisSim.Plots.Drawing;

namespace AxisSim.Tests.Unit.Plots.Drawing;

/// <summary>Figures read in grey: no two series of a panel differ by hue alone.</summary>
public sealed class GreyTests
{
    /// <summary>Two filled bands this far apart in luminance are told apart side by side on a grey print.</summary>
    private const double LeastLuminanceStep = 0.15;

    /// <summary>Two solid lines whose widths differ by this factor are told apart.</summary>
    private const double LeastWidthFactor = 1.25;

    /// <summary>Paper is 1: anything lighter than this would vanish on it.</summary>
    private const double LightestMark = 0.85;

    public static TheoryData<string> Panels => [.. Looks.Panels.Select(p => p.Panel)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void No_two_looks_of_a_panel_differ_by_hue_alone(string panel)
    {
        IReadOnlyList<Look> looks = Looks.Panels.Single(p => p.Panel == panel).Looks;
        for (int i = 0; i < looks.Count; i++)
        {
            Assert.True(Palette.Luminance(looks[i].Colour) < LightestMark, $"{panel}: {looks[i]} vanishes on paper");
            for (int j = i + 1; j < looks.Count; j++)
            {
                Assert.True(Differ(looks[i], looks[j]), $"{panel}: {looks[i]} and {looks[j]} look alike in grey");
            }
        }
    }

    [Fact]
    public void Each_tone_of_the_scale_is_darker_than_the_one_before()
    {
        double[] luminance = [.. Enumerable.Range(0, 101).Select(i => Palette.Luminance(Palette.Tone(i / 100.0)))];
        Assert.All(luminance.Zip(luminance.Skip(1)), pair => Assert.True(pair.Second < pair.First));

        // Paper is 1: the palest tone is told from a cell that was not computed.
        Assert.InRange(luminance[0], 0.7, 0.9);
        Assert.InRange(luminance[^1], 0.0, 0.03);
    }

    [Fact]
    public void Luminance_is_that_of_the_standard()
    {
        // IEC 61966-2-1: white 1, black 0; sRGB 118 is the mid grey of 18 % reflectance (0.181, from memory).
        Assert.Equal(1.0, Palette.Luminance(Palette.Paper), 1e-12);
        Assert.Equal(0.0, Palette.Luminance(Palette.Black), 1e-12);
        Assert.Equal(0.181, Palette.Luminance(OxyPlot.OxyColor.FromRgb(118, 118, 118)), 1e-3);
    }

    private static bool Differ(Look a, Look b)
    {
        if (a.Swatch != b.Swatch || a.Dash != b.Dash || a.Marker != b.Marker || a.Hollow != b.Hollow || a.Pattern != b.Pattern)
        {
            return true;
        }

        if (a.Width > 0 && b.Width > 0)
        {
            return Math.Max(a.Width, b.Width) >= LeastWidthFactor * Math.Min(a.Width, b.Width);
        }

        if (a.Swatch == Swatch.Cell)
        {
            return Math.Abs(Palette.Luminance(a.Fill) - Palette.Luminance(b.Fill)) >= LeastLuminanceStep;
        }

        return Math.Abs(Palette.Luminance(a.Colour) - Palette.Luminance(b.Colour)) >= LeastLuminanceStep;
    }
}
