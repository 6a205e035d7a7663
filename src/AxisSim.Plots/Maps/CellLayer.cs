using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Maps;

/// <summary>The cells of a map: tones as one picture, patterns as lines over it.</summary>
internal sealed class CellLayer(CellGrid grid) : Annotation
{
    /// <summary>Pixels of the picture per pixel of the figure: enough for print.</summary>
    private const int PixelsPerPixel = 2;

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        int width = Math.Max(1, (int)Math.Round(area.Width * PixelsPerPixel)), height = Math.Max(1, (int)Math.Round(area.Height * PixelsPerPixel));
        int[] columns = CellGrid.Indices(grid.X, width), rows = CellGrid.Indices(grid.Y, height);
        int count = grid.X.Centres.Count;
        Look[] looks = [.. Enumerable.Range(0, grid.Picture.Cells.Count).Select(grid.LookOf)];
        OxyColor[] colours = [.. looks.Select((look, cell) => grid.HasValue(cell) ? Palette.Tone(grid.Tone(cell)) : look.Fill)];
        OxyImage image = Raster.Make(width, height, (x, y) => colours[(rows[height - 1 - y] * count) + columns[x]]);
        rc.DrawImage(image, 0, 0, width, height, area.Left, area.Top, area.Width, area.Height, 1.0, false);

        foreach (Look look in looks.Where(look => look.Pattern != Pattern.None).Distinct())
        {
            Hatching.Draw(rc, area, look, (x, y) =>
            {
                int column = Math.Clamp((int)((x - area.Left) * PixelsPerPixel), 0, width - 1), row = Math.Clamp((int)((area.Bottom - y) * PixelsPerPixel), 0, height - 1);
                int cell = (rows[row] * count) + columns[column];
                return ReferenceEquals(looks[cell], look) && !grid.HasValue(cell);
            });
        }
    }
}
