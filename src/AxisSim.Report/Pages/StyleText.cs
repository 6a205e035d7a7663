using System.Reflection;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Report.Pages;

/// <summary>The style of a page: the sheet of rules with the colours of all figures before it.</summary>
internal static class StyleText
{
    private static readonly Lazy<string> s_rules = new(Read);

    /// <summary>The rules.</summary>
    public static string All =>
        $":root {{ --ink: {Hex(Palette.Ink)}; --quiet: {Hex(Palette.QuietInk)}; --paper: {Hex(Palette.Paper)}; --frame: {Hex(Palette.Frame)}; --grid: {Hex(Palette.Grid)}; --shade: {Hex(Palette.LightShade)}; }}\n{s_rules.Value}";

    private static string Hex(OxyColor colour) => $"#{colour.R:x2}{colour.G:x2}{colour.B:x2}";

    private static string Read()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css") ?? throw new InvalidOperationException("the style is missing from the assembly");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
