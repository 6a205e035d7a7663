using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>A finished figure: its size and what is drawn on it. <see cref="FigureWriter"/> puts it into a file.</summary>
public interface IFigure
{
    /// <summary>Title, also the title of the file's metadata.</summary>
    string Title { get; }

    /// <summary>What the figure shows, in a sentence or two, for readers who cannot see it.</summary>
    string Description { get; }

    /// <summary>Width, px at 96 per inch.</summary>
    double Width { get; }

    /// <summary>Height, px at 96 per inch.</summary>
    double Height { get; }

    /// <summary>Draws the figure; the context measures and draws text with the font that comes along.</summary>
    /// <param name="context">Where to draw.</param>
    /// <exception cref="InvalidOperationException">A panel could not be drawn; the cause is the inner exception.</exception>
    void Draw(IRenderContext context);
}
