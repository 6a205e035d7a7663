using System.Text;
using AxisSim.Core.Comparisons;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Invented;
using AxisSim.Tests.Unit.Core.Comparisons;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Comparisons and fits under unlucky inputs, and what their drawings say.</summary>
public sealed class ComparisonFigureTests
{
    private const string Long = "the heavy reflector of Harrow Fell Observatory with a long dew shield and a second guide telescope on a motor of frame 17";
    private static readonly MotorChoice s_motor = SampleMotors.Of("17 long, 0.9 deg");
    private static readonly CandidateCurve s_bare = new([new(0.0, 10.0), new(0.1, 5.0)], [], null, []);

    private static Dictionary<string, IFigure> Unlucky { get; } = new(StringComparer.Ordinal)
    {
        ["five"] = Make(SampleComparisons.Curves(5)),
        ["nine, more than there are looks"] = Make(SampleComparisons.Curves(9)),
        ["one without need, marks or safe rate"] = Make([new("bare", s_bare)]),
        ["no numbers"] = Make([new("bare", s_bare with { Simulated = [new(0.05, double.NaN)], Needed = [new(double.NaN, 1.0)], Safe = new AxisPoint(0.05, double.NaN) })]),
        ["all zero"] = Make([new("bare", s_bare with { ClosedForm = [new(0.0, 0.0), new(0.1, 0.0)] })]),
        ["long words"] = ComparisonFigure.Create(Long, Long, [.. SampleComparisons.Curves(5).Select((curve, i) => curve with { Label = Long[i..] })], Long),
        ["fit"] = MeasuredFigure.Create(SampleComparisons.Fit(12), s_motor.Motor, "Fit", Long),
        ["cap of one point at rest"] = MeasuredFigure.Create(PullOutFit.Of("x", s_motor.Motor, [new MeasuredPoint(0.0, 0.1, 12.0, 1.0, true)]), s_motor.Motor, "Cap"),
    };

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
        Assert.Contains(texts.Boxes, box => box.Text.EndsWith(", N m", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_to_draw_is_refused_in_words_and_rates_are_told_in_words()
    {
        Assert.Contains("nothing to draw", Assert.Throws<ArgumentException>(() => Make([new("x", new CandidateCurve([], [], null, []))])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Make([]));
        Assert.Contains("motor 0 at a reduction of 216 and 24 V: safe up to 7 deg/s.", Make(SampleComparisons.Curves(2)).Description, StringComparison.Ordinal);
        Assert.Contains("bare: no safe rate.", Make([new("bare", s_bare)]).Description, StringComparison.Ordinal);
    }

    private static IFigure Make(IReadOnlyList<ComparisonCurve> curves) => ComparisonFigure.Create("Harrow Fell Observatory: motors compared", "The best one.", curves, "what 1.3 times the load needs of the first");
}
