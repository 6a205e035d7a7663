using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;

namespace AxisSim.Plots.Drawing;

/// <summary>One plot of a sheet with its own heading and legend above it.</summary>
/// <param name="Heading">Heading.</param>
/// <param name="Legend">Legend, on the heading's line where it fits.</param>
/// <param name="Model">The plot.</param>
/// <param name="PlotHeight">Height of the plot area, px.</param>
internal sealed record Panel(string Heading, IReadOnlyList<LegendEntry> Legend, PlotModel Model, double PlotHeight)
{
    /// <summary>Room left of the plot area for tick labels and the axis title; equal for all, so that time axes line up.</summary>
    public const double LeftMargin = 92;

    /// <summary>Room right of the plot area, for the half of the last tick label.</summary>
    public const double RightMargin = 30;

    /// <summary>Room above the plot area, for the half of the topmost tick label.</summary>
    private const double TopRoom = 9;

    private const double TickRoom = 28;
    public const double AxisTitleRoom = 54;

    /// <summary>Height of the plot with the room for the axes below and above it.</summary>
    public double ModelHeight => Model.PlotMargins.Top + PlotHeight + Model.PlotMargins.Bottom;

    /// <summary>An empty plot with its axes.</summary>
    /// <param name="frame">Ranges and size.</param>
    /// <param name="verticalTitle">Title of the vertical axis, with its unit.</param>
    /// <param name="horizontalTitle">Title of the horizontal axis, with its unit; null when a panel below says it.</param>
    /// <param name="logarithmicX">Whether the horizontal axis is logarithmic.</param>
    /// <param name="logarithmicY">Whether the vertical axis is logarithmic.</param>
    public static PlotModel NewModel(PlotFrame frame, string verticalTitle, string? horizontalTitle, bool logarithmicX = false, bool logarithmicY = false)
    {
        PlotModel model = new()
        {
            Culture = CultureInfo.InvariantCulture,
            Background = OxyColors.Undefined,
            PlotAreaBorderColor = Palette.Frame,
            PlotAreaBorderThickness = new OxyThickness(1),
            Padding = new OxyThickness(0),
            PlotMargins = new OxyThickness(LeftMargin, TopRoom, RightMargin, horizontalTitle is null ? TickRoom : AxisTitleRoom),
            TextColor = Palette.Ink,
            DefaultFontSize = TextStyle.TickSize,
            IsLegendVisible = false,
        };
        model.Axes.Add(NewAxis(AxisPosition.Bottom, frame.X, horizontalTitle, Math.Clamp(frame.WidthPixels / 10.0, 60, 110), frame.WidthPixels, logarithmicX));
        model.Axes.Add(NewAxis(AxisPosition.Left, frame.Y, verticalTitle, Math.Clamp(frame.HeightPixels / 5.0, 22, 60), frame.HeightPixels, logarithmicY));
        return model;
    }

    /// <summary>A linear axis of fixed range.</summary>
    public static LinearAxis NewAxis(AxisPosition position, Span range, string? title, double interval) => Dressed(new LinearAxis(), position, range, title, interval);

    private static Axis NewAxis(AxisPosition position, Span range, string? title, double interval, double pixels, bool logarithmic)
    {
        Axis axis = logarithmic
            ? Dressed(new DecadeAxis { MostTicks = Math.Max(3, (int)(pixels / interval)) }, position, range, title, interval)
            : NewAxis(position, range, title, interval);
        if (title is not null)
        {
            (axis.Title, axis.TitleFontSize) = AxisTitle.Fit(title, pixels);
        }

        axis.LabelFormatter = logarithmic ? ExactLabel : Label;
        return axis;
    }

    private static T Dressed<T>(T axis, AxisPosition position, Span range, string? title, double interval)
        where T : Axis
    {
        axis.Position = position;
        axis.Minimum = range.From;
        axis.Maximum = range.To;
        axis.AbsoluteMinimum = range.From;
        axis.AbsoluteMaximum = range.To;
        axis.MinimumPadding = 0;
        axis.MaximumPadding = 0;
        axis.Title = title;
        axis.TitleFontSize = TextStyle.AxisSize;
        axis.FontSize = TextStyle.TickSize;
        axis.TitleColor = Palette.Ink;
        axis.AxisTitleDistance = 10;
        axis.AxislineStyle = LineStyle.None;
        axis.TicklineColor = Palette.Frame;
        axis.TickStyle = TickStyle.Outside;
        axis.MajorTickSize = 5;
        axis.MinorTickSize = 0;
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = Palette.Grid;
        axis.MajorGridlineThickness = 1;
        axis.IntervalLength = interval;
        axis.LabelFormatter = Label;
        axis.IsZoomEnabled = false;
        axis.IsPanEnabled = false;
        return axis;
    }

    /// <summary>A tick label: invariant digits, a true minus sign, no noise in the last digits.</summary>
    public static string Label(double value) => Label(value, 1e-12);

    /// <summary>A label of a logarithmic axis, on which nothing is near zero.</summary>
    private static string ExactLabel(double value) => Label(value, 0.0);

    private static string Label(double value, double noise)
    {
        double magnitude = Math.Abs(value);
        string text = magnitude <= noise ? "0"
            : magnitude is >= 1e6 or < 1e-4 ? magnitude.ToString("0.###e0", CultureInfo.InvariantCulture)
            : magnitude.ToString("0.########", CultureInfo.InvariantCulture);
        return value < 0 && text != "0" ? "\u2212" + text : text;
    }

    /// <summary>Draws a plot and throws what OxyPlot would otherwise paint into the picture.</summary>
    public static void Render(IRenderContext context, PlotModel model, OxyRect area)
    {
        IPlotModel plot = model;
        plot.Update(true);
        if (model.GetLastPlotException() is null)
        {
            plot.Render(context, area);
        }

        if (model.GetLastPlotException() is Exception cause)
        {
            throw new InvalidOperationException($"A figure could not be drawn: {cause.Message}", cause);
        }
    }
}
