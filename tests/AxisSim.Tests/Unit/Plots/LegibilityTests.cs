using System.Text;
using System.Xml.Linq;
using AxisSim.Core.Outcomes;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Moves;
using AxisSim.Plots.TorqueSpeed;
using AxisSim.Tests.Invented;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Texts that stay on the sheet and off the data, and legends that promise only what is drawn.</summary>
public sealed class LegibilityTests
{
    // Common wide sans-serif faces run 10 to 15 % wider than the one measured (from memory).
    private const double WiderFont = 1.15;

    [Fact]
    public void Title_and_sentence_fit_the_sheet_in_a_wider_font_too()
    {
        string words = string.Join(' ', Enumerable.Repeat("heavy reflector of Harrow Fell", 12));
        (Trace trace, AxisOutcome outcome) = SampleMoves.Good(0.02);
        XElement root = XElement.Parse(Encoding.UTF8.GetString(Figures.Svg(MoveSheet.Create(trace, outcome, words, words))));
        double[] widths = [.. root.Descendants().Where(e => e.Name.LocalName == "text" && words.Contains(e.Value, StringComparison.Ordinal)).Select(e => double.Parse(e.Attribute("textLength")!.Value, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.True(widths.Length >= 4, "both texts are broken into lines");
        Assert.All(widths, width => Assert.InRange(WiderFont * width, 0.0, Sheet.SheetWidth - 24.0));
    }

    [Fact]
    public void The_note_at_the_loss_of_sync_hides_none_of_the_curve()
    {
        (Trace trace, AxisOutcome outcome) = SampleMoves.Stalled();
        Panel panel = LossPanel.Create(new MoveData(trace, outcome), outcome.Loss!);
        TextAnnotation note = Assert.Single(panel.Model.Annotations.OfType<TextAnnotation>());
        using InterRenderContext measurer = new();
        PlotFrame frame = new(Range(panel.Model.Axes[0]), Range(panel.Model.Axes[1]), Sheet.PlotWidth, panel.PlotHeight);
        double halfWidth = measurer.MeasureText(note.Text, null, note.FontSize, 400).Width / 2.0 / frame.PixelsPerX, halfHeight = note.FontSize / 2.0 / frame.PixelsPerY;
        List<DataPoint> curve = panel.Model.Series.OfType<LineSeries>().Single().Points;
        for (int i = 1; i < curve.Count; i++)
        {
            for (double share = 0.0; share <= 1.0; share += 0.05)
            {
                double x = curve[i - 1].X + (share * (curve[i].X - curve[i - 1].X)), y = curve[i - 1].Y + (share * (curve[i].Y - curve[i - 1].Y));
                Assert.False(Math.Abs(x - note.TextPosition.X) < halfWidth && Math.Abs(y - note.TextPosition.Y) < halfHeight, $"the curve runs through the note at {x}, {y}");
            }
        }
    }

    [Fact]
    public void A_supply_band_too_thin_to_see_is_not_in_the_legend()
    {
        TorqueSpeedCurves curves = SampleMoves.Curves();
        Assert.Contains("full-stepped, 21.6\u201326.4 V", Legend(curves));
        PullOutCurve nominal = curves.Curves.First(curve => curve.FullStepping && curve.Supply == SupplyLevel.Nominal);
        TorqueSpeedCurves thin = curves with
        {
            Curves = [.. curves.Curves.Select(curve => curve.FullStepping ? curve with { ClosedFormNewtonMetres = [.. nominal.ClosedFormNewtonMetres.Select(torque => torque * (curve.Supply == SupplyLevel.High ? 1.001 : 1.0))] } : curve)],
        };
        Assert.DoesNotContain("full-stepped, 21.6\u201326.4 V", Legend(thin));
    }

    [Fact]
    public void An_upright_sample_in_a_legend_shows_its_dash_and_dot()
    {
        // 22 px of sample: dash, gap, dot, gap and a second dash must have begun within them.
        double[] dashes = Marks.ShortDashArray(Looks.Changeover)!;
        Assert.InRange(dashes.Sum() * Looks.Changeover.Width, 1.0, 18.0);
        Assert.All(dashes, dash => Assert.True(dash * Looks.Changeover.Width >= 2.0, "a gap or dot that no pixel shows"));
    }

    private static string[] Legend(TorqueSpeedCurves curves) => [.. PlanePanel.Create(curves, SampleMoves.TotalRatio).Legend.Select(entry => entry.Text)];

    private static Span Range(OxyPlot.Axes.Axis axis) => new(axis.Minimum, axis.Maximum);
}
