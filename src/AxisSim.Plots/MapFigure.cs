using AxisSim.Plots.Drawing;
using AxisSim.Plots.Maps;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>The map of many moves over two keys: how each ends, a figure of those that arrive, the edge of arriving, and a marked point.</summary>
/// <remarks>
/// The cells are one embedded picture of a fixed number of pixels, so that a map of many cells makes no larger a drawing; patterns, the edge and
/// all text are lines and letters.
/// </remarks>
public static class MapFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="picture">The map.</param>
    /// <exception cref="ArgumentException">A list has another length than the map has cells, or a key's values do not ascend.</exception>
    public static IFigure Create(MapPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        CellGrid grid = new(picture);
        return new Sheet(picture.Title, picture.Sentence, MapDescription.Of(grid), [MapPanel.Create(grid)]);
    }
}
