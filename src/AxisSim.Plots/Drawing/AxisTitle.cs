namespace AxisSim.Plots.Drawing;

/// <summary>Fits the title of an axis to its length, for OxyPlot would cut off its end, which is the unit.</summary>
internal static class AxisTitle
{
    private const double SmallestSize = 10;
    private const double Share = 0.86;
    private const string LeftOut = "\u2026";

    /// <summary>The title and its size: smaller when it must be, and with its middle left out when that is not enough.</summary>
    public static (string Title, double Size) Fit(string title, double length)
    {
        using InterRenderContext measurer = new();
        double room = Share * length;
        double width = Width(title);
        double size = Math.Clamp(TextStyle.AxisSize * room / Math.Max(width, 1e-9), SmallestSize, TextStyle.AxisSize);
        int kept = title.Length;
        string text = title;
        while (Width(text) * size / TextStyle.AxisSize > room && kept > 2)
        {
            kept--;
            text = title[..((kept + 1) / 2)] + LeftOut + title[^(kept / 2)..];
        }

        return (text, size);

        double Width(string words) => measurer.MeasureText(words, null, TextStyle.AxisSize, TextStyle.Regular).Width;
    }
}
