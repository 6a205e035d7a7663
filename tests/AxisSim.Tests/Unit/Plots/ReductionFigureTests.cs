using System.Text;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Plots.Reductions;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>The lesson on the reduction under unlucky inputs, and what its drawing says.</summary>
public sealed class ReductionFigureTests
{
    private const string Long = "the heavy reflector of Harrow Fell Observatory with a long dew shield and a second guide telescope";

    private static readonly ReductionPoint Nothing = SampleReductions.Point(50.0, Limit.NotSimulated) with
    {
        Facts = SampleReductions.Facts(50.0) with { RateRadiansPerSecond = 0.0, AccelerationRadiansPerSecondSquared = 0.0, TorqueAtRestNewtonMetres = 0.0, FrictionLagRadians = double.NaN, PulseLimitRadiansPerSecond = double.PositiveInfinity },
        SafeRateRadiansPerSecond = double.NaN, SafeAccelerationRadiansPerSecondSquared = double.NaN, TorqueAtSlewNewtonMetres = 0.0,
    };

    private static Dictionary<string, ReductionPicture> Unlucky { get; } = new(StringComparer.Ordinal)
    {
        ["several"] = SampleReductions.Picture(SampleReductions.Several()),
        ["one"] = SampleReductions.Picture(SampleReductions.Result(216.0, [SampleReductions.Point(216.0, Limit.PulseRate)])),
        ["nothing works"] = SampleReductions.Picture(SampleReductions.Result(50.0, [Nothing])) with { AskedRateRadiansPerSecond = 0.0, AskedAccelerationRadiansPerSecondSquared = double.NaN, ToleranceRadians = double.NaN },
        ["no match"] = SampleReductions.Picture(SampleReductions.Several() with { AtOptimum = null, Match = SampleReductions.Match with { MotorTorqueNewtonMetres = 0.0 } }),
        ["match far away"] = SampleReductions.Picture(SampleReductions.Several() with { AtOptimum = SampleReductions.Facts(1e7) }),
        ["match below"] = SampleReductions.Picture(SampleReductions.Several() with { AtOptimum = SampleReductions.Facts(20.0), Match = SampleReductions.Match with { MotorInertiaKilogramSquareMetres = 0.045 } }),
        ["long words"] = SampleReductions.Picture(SampleReductions.Several()) with { Title = Long + Long, Sentence = Long + Long + Long },
        ["huge span"] = SampleReductions.Picture(SampleReductions.Several()) with { ToleranceRadians = 1e-15, AskedRateRadiansPerSecond = 1e6 },
    };

    public static TheoryData<string> Names => [.. Unlucky.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void They_are_drawn_with_every_text_on_the_sheet_and_none_on_another(string name)
    {
        IFigure figure = ReductionFigure.Create(Unlucky[name]);
        Assert.NotEmpty(Figures.Png(figure));
        Assert.DoesNotContain("NaN", Encoding.UTF8.GetString(Figures.Svg(figure)), StringComparison.Ordinal);
        using Texts texts = new();
        figure.Draw(texts);
        Assert.Null(texts.Fault(figure));
    }

    [Fact]
    public void Own_and_match_are_marked_and_each_panel_has_its_lines()
    {
        IReadOnlyList<Panel> panels = ReductionPanels.Create(Unlucky["several"]);
        Assert.Equal(["Greatest slew rate", "Greatest acceleration", "Torque at the axis", "Resolution"], panels.Select(panel => panel.Heading));
        Assert.All(panels, panel => Assert.Equal(["this file", "inertia-matched"], panel.Legend.TakeLast(2).Select(entry => entry.Text)));
        Assert.Equal(["simulated", "closed form", "pulse limit", "in the file"], panels[0].Legend.SkipLast(2).Select(entry => entry.Text));
        Assert.Equal("simulated; flat: end of the search", panels[1].Legend[0].Text);
        Assert.DoesNotContain(ReductionPanels.Create(Unlucky["match far away"])[0].Legend, entry => entry.Text == "inertia-matched");
    }

    [Fact]
    public void Words_tell_what_the_drawing_shows()
    {
        string words = ReductionFigure.Create(Unlucky["several"]).Description;
        Assert.Contains("At 27: no deg/s, no deg/s^2", words, StringComparison.Ordinal);
        Assert.Contains("At 216: 6.51 deg/s, 43.2 deg/s^2, 14 N m at rest, microstep 0.234 arcsec.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_to_draw_is_refused_in_words()
    {
        ReductionResult several = SampleReductions.Several();
        Assert.Contains("nothing to draw", Assert.Throws<ArgumentException>(() => ReductionFigure.Create(SampleReductions.Picture(several with { Points = [] }))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ReductionFigure.Create(SampleReductions.Picture(several with { Points = [SampleReductions.Point(0.0, Limit.Friction)] })));
    }
}
