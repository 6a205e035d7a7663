using System.Text;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Envelopes;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Invented;
using OxyPlot;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Envelopes and growth under unlucky inputs, and what their drawings say.</summary>
public sealed class EnvelopeFigureTests
{
    private static readonly EnvelopeCurve None = new("nothing arrives", [new(1, double.NaN), new(2, double.NaN)]);

    private static Dictionary<string, IFigure> Unlucky { get; } = new(StringComparer.Ordinal)
    {
        ["three"] = EnvelopeFigure.Create(SampleEnvelopes.Three()),
        ["logarithmic"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { LogarithmicRamps = true }),
        ["one point"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Curves = [new("10 kg", [new(2, 0.05)])], Own = null }),
        ["no rate at all"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Curves = [None], Own = null }),
        ["no point, no bound"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Own = null, Bound = null }),
        ["own point is no number"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Own = (new EnvelopePoint(double.NaN, 1), "nowhere") }),
        ["own point far off"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Own = (new EnvelopePoint(40, 1.5), "far off") }),
        ["tiny rates"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Curves = [new("10 kg", [new(1, 1e-7), new(2, 2e-7)])], Own = null, Bound = null }),
        ["long words"] = EnvelopeFigure.Create(SampleEnvelopes.Three() with { Title = Long, Sentence = Long, Own = (new EnvelopePoint(9, 0.07), Long), Curves = [.. Enumerable.Range(0, 7).Select(i => new EnvelopeCurve(Long[i..], [new(1, 0.01 * i), new(10, 0.02 * i)]))] }),
        ["growth"] = GrowthFigure.Create("Growth", "", SampleEnvelopes.Growth()),
        ["growth of one point"] = GrowthFigure.Create("Growth", "", [new("Run time", "Simulated time, s", "Run time, s", [new(10, 0.01), new(-1, 2), new(3, double.NaN)])]),
        ["growth of huge figures"] = GrowthFigure.Create("Growth", "", [new("Run time", "Simulated time, s", "Run time, s", [new(1e-12, 1e12), new(1e12, 1e-12)])]),
    };

    private const string Long = "the heavy reflector of Harrow Fell Observatory with a long dew shield and a second guide telescope";

    public static TheoryData<string> Names => [.. Unlucky.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void They_are_drawn_with_every_text_on_the_sheet_and_none_on_another(string name)
    {
        IFigure figure = Unlucky[name];
        Assert.NotEmpty(Figures.Png(figure));
        Assert.DoesNotContain("NaN", Encoding.UTF8.GetString(Figures.Svg(figure)), StringComparison.Ordinal);
        using Texts texts = new();
        figure.Draw(texts);
        Assert.Null(texts.Fault(figure));
        Assert.Contains(texts.Boxes, box => box.Text.EndsWith(", s", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_to_draw_is_refused_in_words()
    {
        Assert.Contains("nothing to draw", Assert.Throws<ArgumentException>(() => EnvelopeFigure.Create(SampleEnvelopes.Three() with { Curves = [] })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => EnvelopeFigure.Create(SampleEnvelopes.Three() with { Curves = [new("x", [new(0, 1)])], LogarithmicRamps = true }));
        Assert.Throws<ArgumentException>(() => GrowthFigure.Create("t", "", []));
        Assert.Throws<ArgumentException>(() => GrowthFigure.Create("t", "", [new("h", "x, s", "y, s", [new(0, 1)])]));
    }

    [Fact]
    public void A_ramp_without_a_safe_rate_is_told_in_words_and_leaves_a_gap()
    {
        IFigure figure = EnvelopeFigure.Create(SampleEnvelopes.Three());
        Assert.Contains("12 kg: none at 0.125 s", figure.Description, StringComparison.Ordinal);
        Panel panel = EnvelopePanel.Create(SampleEnvelopes.Three());
        Assert.Equal(["8 kg", "10 kg", "12 kg", "greatest pulse rate", "marked point"], panel.Legend.Select(entry => entry.Text));
        Assert.Equal("nothing arrives: no safe rate", EnvelopePanel.Create(SampleEnvelopes.Three() with { Curves = [None] }).Legend[0].Text);
        Assert.Contains(panel.Model.Series.OfType<OxyPlot.Series.LineSeries>().SelectMany(line => line.Points), point => !point.IsDefined());
    }
}
