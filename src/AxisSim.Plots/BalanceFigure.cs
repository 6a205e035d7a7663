using System.Globalization;
using AxisSim.Plots.Balance;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>The imbalance about each axis over the sky, and bar, weights and payload to scale.</summary>
public static class BalanceFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="picture">What to draw.</param>
    /// <exception cref="ArgumentException">A list has another length than the map has places, or there is no place at all.</exception>
    public static IFigure Create(BalancePicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        int places = picture.HourAngles.Count * picture.Declinations.Count;
        if (places == 0 || picture.Axes.Any(axis => axis.NewtonMetres.Count != places))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A map of {picture.HourAngles.Count} by {picture.Declinations.Count} places needs as many torques, and one place at least."), nameof(picture));
        }

        Span range = SkyPanel.Range(picture);
        string worst = string.Join(" ", picture.Axes.Select(axis => $"{axis.Heading}: {(axis.Worst is { } most ? $"greatest {most.Label}" : "none")}."));
        string parts = string.Join(", ", picture.Parts.Append(picture.Weights).OfType<PayloadPart>().Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Name} at {part.OutMetres:0.###} m")));
        string description = $"{(picture.Sentence.Length > 0 ? picture.Sentence + " " : "")}Imbalance over hour angle and declination, darker is more. {worst} Below, to scale along the declination axis: {parts}.";
        return new Sheet(picture.Title, picture.Sentence, description, [.. picture.Axes.Select(axis => SkyPanel.Create(picture, axis, range)), BarPanel.Create(picture)]);
    }
}
