using AxisSim.Core.Maps;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Plots.Maps;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Balance;

/// <summary>The places of a sky map: tones as one picture, the ground and what friction hides as lines over it.</summary>
internal sealed class SkyLayer(GridScale x, GridScale y, SkyImbalance axis, Span range) : Annotation
{
    /// <summary>Pixels of the picture per pixel of the figure: enough for print.</summary>
    private const int PixelsPerPixel = 2;

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        int width = Math.Max(1, (int)Math.Round(area.Width * PixelsPerPixel)), height = Math.Max(1, (int)Math.Round(area.Height * PixelsPerPixel));
        int[] columns = CellGrid.Indices(x, width), rows = CellGrid.Indices(y, height);
        double At(int column, int row) => axis.NewtonMetres[(rows[height - 1 - row] * x.Centres.Count) + columns[column]];
        OxyImage image = Raster.Make(width, height, (column, row) => At(column, row) is var torque && double.IsFinite(torque) ? Palette.Tone((torque - range.From) / range.Length) : Looks.SkyGround.Fill);
        rc.DrawImage(image, 0, 0, width, height, area.Left, area.Top, area.Width, area.Height, 1.0, false);
        double There(double left, double top) =>
            At(Math.Clamp((int)((left - area.Left) * PixelsPerPixel), 0, width - 1), Math.Clamp((int)((top - area.Top) * PixelsPerPixel), 0, height - 1));
        Hatching.Draw(rc, area, Looks.SkyGround, (left, top) => double.IsNaN(There(left, top)));
        Hatching.Draw(rc, area, Looks.SkyHidden, (left, top) => There(left, top) <= axis.HiddenNewtonMetres);
    }
}
