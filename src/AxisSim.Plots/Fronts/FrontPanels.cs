using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Fronts;

/// <summary>The panels of a trade-off, all over the slew time.</summary>
internal static class FrontPanels
{
    private const double Height = 230;
    private const double Room = 0.06;

    /// <summary>Makes the panels.</summary>
    public static IReadOnlyList<Panel> Create(FrontPicture picture) =>
    [
        Panel(picture, "Margin", "Load factor, 1", point => point.LoadFactor, picture.AskedLoadFactor, last: false),
        Panel(picture, "Settling", "Settling time, s", point => point.SettleSeconds, null, last: false),
        Panel(picture, "Heat", "Winding, degC", point => point.Celsius, null, last: true),
    ];

    private static Panel Panel(FrontPicture picture, string heading, string title, Func<FrontMark, double> value, double? asked, bool last)
    {
        List<FrontMark> all = [.. picture.Points, .. picture.Chosen is { } one ? [one] : Array.Empty<FrontMark>()];
        Span x = Span.Of([.. all.Select(point => point.SlewSeconds)]).Padded(Room, Room);
        Span y = Span.Of([.. all.Select(value)], asked is { } a ? [a] : []).Padded(Room, 2.0 * Room);
        PlotModel model = Drawing.Panel.NewModel(new PlotFrame(x, y, Sheet.PlotWidth, Height), title, last ? "Slew time, s" : null);
        var legend = new List<LegendEntry>();
        if (asked is { } level)
        {
            model.Series.Add(Marks.Line(Looks.FrontAsked, [new DataPoint(x.From, level), new DataPoint(x.To, level)]));
            legend.Add(new("asked for", Looks.FrontAsked));
        }

        void Add(string label, Look look, IEnumerable<FrontMark> points)
        {
            List<DataPoint> places = [.. points.Select(point => new DataPoint(point.SlewSeconds, value(point))).Where(place => double.IsFinite(place.X) && double.IsFinite(place.Y))];
            if (places.Count > 0)
            {
                model.Series.Add(Marks.Markers(look, places));
                legend.Add(new(label, look));
            }
        }

        Add("microsteps throughout", Looks.FrontMicro, picture.Points.Where(point => !point.FullSteps && Holds(picture, point)));
        Add("full steps at speed", Looks.FrontFull, picture.Points.Where(point => point.FullSteps && Holds(picture, point)));
        Add("less margin than asked for", Looks.FrontShort, picture.Points.Where(point => !Holds(picture, point)));
        Add("recommended", Looks.MapPoint, picture.Chosen is { } chosen ? [chosen] : []);
        return new Panel(heading, legend, model, Height);
    }

    private static bool Holds(FrontPicture picture, FrontMark point) => point.LoadFactor >= picture.AskedLoadFactor - 1e-9;
}
