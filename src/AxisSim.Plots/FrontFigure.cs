using System.Globalization;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Fronts;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>The points that no other beats in everything: slew time against load factor, settling and temperature, one panel each.</summary>
public static class FrontFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="picture">Points and what is marked.</param>
    /// <exception cref="ArgumentException">There is no point at all.</exception>
    public static IFigure Create(FrontPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        if (!picture.Points.Any(point => double.IsFinite(point.SlewSeconds)))
        {
            throw new ArgumentException("A trade-off without a point has nothing to draw.", nameof(picture));
        }

        string points = string.Join("; ", picture.Points.Select(Words));
        string chosen = picture.Chosen is { } one ? $" Recommended: {Words(one)}." : "";
        string description = $"{(picture.Sentence.Length > 0 ? picture.Sentence + " " : "")}Load factor, settling time and winding temperature against slew time. {points}.{chosen}";
        return new Sheet(picture.Title, picture.Sentence, description, FrontPanels.Create(picture));
    }

    private static string Words(FrontMark point) => string.Create(
        CultureInfo.InvariantCulture, $"{point.SlewSeconds:G3} s slew, {point.SettleSeconds:G3} s settling, load factor {point.LoadFactor:G3}, {point.Celsius:F0} degC{(point.FullSteps ? ", full-stepping" : "")}");
}
