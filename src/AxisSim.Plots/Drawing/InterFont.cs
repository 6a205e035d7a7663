using System.Reflection;
using SkiaSharp;

namespace AxisSim.Plots.Drawing;

/// <summary>The typeface that comes with the program, so that no system font is needed.</summary>
/// <remarks>
/// Inter 3.019, Regular and Bold, "Copyright 2020 The Inter Project Authors", SIL Open Font License 1.1: see Fonts/OFL.txt.
/// The files are the unmodified faces that the NuGet package Avalonia.Fonts.Inter 12.1.6 carries in its assembly.
/// </remarks>
internal static class InterFont
{
    /// <summary>Name of the family, with what a viewer of an SVG may take in its place.</summary>
    public const string SvgFamilies = "Inter, 'Helvetica Neue', Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

    /// <summary>Weight from which the bold face is taken.</summary>
    private const double BoldFrom = 600;

    private static readonly Lazy<SKTypeface> s_regular = new(() => Load("Inter-Regular.ttf"));
    private static readonly Lazy<SKTypeface> s_bold = new(() => Load("Inter-Bold.ttf"));

    /// <summary>The face for a weight (400 regular, 700 bold).</summary>
    public static SKTypeface Face(double weight) => weight >= BoldFrom ? s_bold.Value : s_regular.Value;

    /// <summary>The bytes of a face as embedded.</summary>
    public static Stream Open(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"the font {name} is missing from the assembly");

    private static SKTypeface Load(string name)
    {
        using Stream stream = Open(name);
        using SKData data = SKData.Create(stream);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException($"the font {name} cannot be read");
    }
}
