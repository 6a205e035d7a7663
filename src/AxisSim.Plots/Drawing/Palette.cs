using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>The only colours of all figures.</summary>
/// <remarks>
/// Series: M. Okabe and K. Ito, "Color Universal Design: how to make figures and presentations that are friendly to colorblind
/// people" (2002, revised 2008), values from memory. No colour carries a meaning alone: see <see cref="Look"/>.
/// </remarks>
internal static class Palette
{
    public static readonly OxyColor Black = OxyColor.FromRgb(0, 0, 0);
    public static readonly OxyColor Orange = OxyColor.FromRgb(230, 159, 0);
    public static readonly OxyColor SkyBlue = OxyColor.FromRgb(86, 180, 233);
    public static readonly OxyColor Green = OxyColor.FromRgb(0, 158, 115);
    public static readonly OxyColor Blue = OxyColor.FromRgb(0, 114, 178);
    public static readonly OxyColor Vermillion = OxyColor.FromRgb(213, 94, 0);

    public static readonly OxyColor Paper = OxyColors.White;
    public static readonly OxyColor Ink = OxyColor.FromRgb(26, 26, 26);
    public static readonly OxyColor QuietInk = OxyColor.FromRgb(85, 85, 85);
    public static readonly OxyColor Frame = OxyColor.FromRgb(120, 120, 120);
    public static readonly OxyColor Grid = OxyColor.FromRgb(226, 226, 226);
    public static readonly OxyColor Shade = OxyColor.FromRgb(214, 214, 214);
    public static readonly OxyColor LightShade = OxyColor.FromRgb(238, 238, 238);

    /// <summary>Stops of the scale of tones, evenly spaced: each darker than the one before, so that it reads in grey.</summary>
    private static readonly OxyColor[] s_tones = [Tint(SkyBlue, 0.16), Tint(SkyBlue, 0.6), Tint(Blue, 0.8), Blue, OxyColor.FromRgb(0, 68, 116), OxyColor.FromRgb(0, 30, 60)];

    /// <summary>The tone at a share of the scale, 0 palest to 1 darkest.</summary>
    public static OxyColor Tone(double share)
    {
        double place = Math.Clamp(share, 0.0, 1.0) * (s_tones.Length - 1);
        int below = Math.Min((int)place, s_tones.Length - 2);
        double part = place - below;
        (OxyColor a, OxyColor b) = (s_tones[below], s_tones[below + 1]);
        return OxyColor.FromRgb(Along(a.R, b.R), Along(a.G, b.G), Along(a.B, b.B));

        byte Along(byte from, byte to) => (byte)Math.Round(from + (part * (to - from)));
    }

    /// <summary>A colour mixed with the paper: opaque, so that bands keep their order in grey and in every viewer.</summary>
    public static OxyColor Tint(OxyColor colour, double share) => OxyColor.FromRgb(Mix(colour.R, share), Mix(colour.G, share), Mix(colour.B, share));

    /// <summary>Relative luminance of a colour, 0 black to 1 white (IEC 61966-2-1 with the weights of ITU-R BT.709).</summary>
    public static double Luminance(OxyColor colour) => (0.2126 * Linear(colour.R)) + (0.7152 * Linear(colour.G)) + (0.0722 * Linear(colour.B));

    private static byte Mix(byte channel, double share) => (byte)Math.Round((channel * share) + (255.0 * (1.0 - share)));

    private static double Linear(byte channel)
    {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
