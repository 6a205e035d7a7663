using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Balance;

/// <summary>Bar, weights and payload seen from the side, to one scale both ways, with the tube pointing at the pole.</summary>
internal static class BarPanel
{
    private const double Height = 430;
    private const double Room = 0.08;

    /// <summary>A bar is drawn so thick, m: its own thickness is not known.</summary>
    private const double BarThickness = 0.03;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(BalancePicture picture)
    {
        PayloadPart?[] all = [.. picture.Parts, picture.Weights, picture.Advised];
        PayloadPart[] drawn = [.. all.OfType<PayloadPart>()];
        double[] along = [0.0, -picture.BarMetres, -(picture.GreatestMetres ?? 0.0), .. drawn.SelectMany(part => new[] { part.OutMetres - (0.5 * part.AlongOutMetres), part.OutMetres + (0.5 * part.AlongOutMetres) })];
        double[] across = [-BarThickness, BarThickness, .. drawn.SelectMany(part => new[] { part.ForwardMetres - (0.5 * part.AlongForwardMetres), part.ForwardMetres + (0.5 * part.AlongForwardMetres) })];
        (Span x, Span y) = Square(Span.Of(along).Padded(Room, Room), Span.Of(across).Padded(Room, Room));
        PlotModel model = Panel.NewModel(new PlotFrame(x, y, Drawing.Sheet.PlotWidth, Height), "Along the tube, m", "Along the declination axis, m (weights left)");
        var legend = new List<LegendEntry> { new("polar axis", Looks.BarPole) };
        model.Annotations.Add(Marks.Upright(Looks.BarPole, 0.0));
        if (picture.BarMetres > 0.0)
        {
            model.Annotations.Add(Box(new PayloadPart("", -0.5 * picture.BarMetres, 0.0, picture.BarMetres, BarThickness), Looks.BarBar));
            legend.Add(new("bar", Looks.BarBar));
        }

        foreach (PayloadPart part in picture.Parts.OrderByDescending(part => part.AlongForwardMetres * part.AlongOutMetres))
        {
            Add(model, part, Looks.BarPart);
        }

        legend.Add(new("payload", Looks.BarPart));
        if (picture.Weights is { } weights)
        {
            Add(model, weights, Looks.BarWeights);
            legend.Add(new("weights", Looks.BarWeights));
        }

        if (picture.Advised is { } advised)
        {
            model.Series.Add(Marks.Line(Looks.BarAdvised, Outline(advised)));
            legend.Add(new("where they should be", Looks.BarAdvised));
        }

        if (picture.GreatestMetres is { } greatest)
        {
            model.Annotations.Add(Marks.Upright(Looks.BarEnd, -greatest));
            legend.Add(new("as far as the bar allows", Looks.BarEnd));
        }

        Label(model, drawn.Where(part => !ReferenceEquals(part, picture.Advised)), y);
        return new Panel("Bar, weights and payload to scale, tube at the pole", legend, model, Height);
    }

    // One scale both ways: the narrower direction is widened about its middle.
    private static (Span X, Span Y) Square(Span x, Span y)
    {
        double metresPerPixel = Math.Max(x.Length / Drawing.Sheet.PlotWidth, y.Length / Height);
        return (Widened(x, metresPerPixel * Drawing.Sheet.PlotWidth), Widened(y, metresPerPixel * Height));

        static Span Widened(Span span, double length) => new(0.5 * (span.From + span.To - length), 0.5 * (span.From + span.To + length));
    }

    private static void Add(PlotModel model, PayloadPart part, Look look)
    {
        if (part.AlongOutMetres > 0.0 && part.AlongForwardMetres > 0.0)
        {
            model.Annotations.Add(Box(part, look));
        }
        else
        {
            model.Series.Add(Marks.Markers(Looks.BarPoint, [new DataPoint(part.OutMetres, part.ForwardMetres)]));
        }
    }

    private static RectangleAnnotation Box(PayloadPart part, Look look) => new()
    {
        MinimumX = part.OutMetres - (0.5 * part.AlongOutMetres),
        MaximumX = part.OutMetres + (0.5 * part.AlongOutMetres),
        MinimumY = part.ForwardMetres - (0.5 * part.AlongForwardMetres),
        MaximumY = part.ForwardMetres + (0.5 * part.AlongForwardMetres),
        Fill = look.Fill,
        Stroke = look.Colour,
        StrokeThickness = 1.4,
        Layer = AnnotationLayer.BelowSeries,
    };

    private static List<DataPoint> Outline(PayloadPart part)
    {
        // A point gets a small frame of its own, or nothing would show.
        double a = Math.Max(part.AlongOutMetres, BarThickness) / 2.0, b = Math.Max(part.AlongForwardMetres, 2.0 * BarThickness) / 2.0;
        (double x, double y) = (part.OutMetres, part.ForwardMetres);
        return [new(x - a, y - b), new(x + a, y - b), new(x + a, y + b), new(x - a, y + b), new(x - a, y - b)];
    }

    // Names beside their parts; of parts one above the other each stands a line lower than the one before.
    private static void Label(PlotModel model, IEnumerable<PayloadPart> parts, Span y)
    {
        double line = y.Length * (TextStyle.LegendSize * 1.6) / Height;
        var taken = new List<(double X, double Y)>();
        foreach (PayloadPart part in parts.OrderByDescending(part => part.ForwardMetres))
        {
            // The name of the weights stands below them, where it hides no place that they should move to.
            double at = part.OutMetres < 0.0 ? part.ForwardMetres - (0.5 * part.AlongForwardMetres) - line : part.ForwardMetres;
            while (taken.Any(other => Math.Abs(other.Y - at) < line && Math.Abs(other.X - part.OutMetres) < 8.0 * line))
            {
                at -= line;
            }

            taken.Add((part.OutMetres, at));
            model.Annotations.Add(Marks.Note(part.Name, part.OutMetres, Math.Max(at, y.From + line), HorizontalAlignment.Center, VerticalAlignment.Middle));
        }
    }
}
