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
    public static PlotModel NewModel(PlotFrame frame, string verticalTitle, string? horizontalTitle)
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
        model.Axes.Add(NewAxis(AxisPosition.Bottom, frame.X, horizontalTitle, Math.Clamp(frame.WidthPixels / 10.0, 60, 110)));
        model.Axes.Add(NewAxis(AxisPosition.Left, frame.Y, verticalTitle, Math.Clamp(frame.HeightPixels / 5.0, 22, 60)));
        return model;
    }

    /// <summary>An axis of fixed range.</summary>
    public static LinearAxis NewAxis(AxisPosition position, Span range, string? title, double interval) => new()
    {
        Position = position,
        Minimum = range.From,
        Maximum = range.To,
        AbsoluteMinimum = range.From,
        AbsoluteMaximum = range.To,
        MinimumPadding = 0,
        MaximumPadding = 0,
        Title = title,
        TitleFontSize = TextStyle.AxisSize,
        FontSize = TextStyle.TickSize,
        TitleColor = Palette.Ink,
        AxisTitleDistance = 10,
        AxislineStyle = LineStyle.None,
        TicklineColor = Palette.Frame,
        TickStyle = TickStyle.Outside,
        MajorTickSize = 5,
        MinorTickSize = 0,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Palette.Grid,
        MajorGridlineThickness = 1,
        IntervalLength = interval,
        LabelFormatter = Label,
        IsZoomEnabled = false,
        IsPanEnabled = false,
    };

    /// <summary>A tick label: invariant digits, a true minus sign, no noise in the last digits.</summary>
    public static string Label(double value)
    {
        double magnitude = Math.Abs(value);
        string text = magnitude < 1e-12 ? "0"
            : magnitude is >= 1e6 or < 1e-5 ? magnitude.ToString("0.###e0", CultureInfo.InvariantCulture)
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
