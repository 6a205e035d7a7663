using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Reductions;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Invented;
using AxisSim.Tests.Unit.Plots;

namespace AxisSim.Tests.Golden;

/// <summary>The page of the lesson on the reduction word for word, under several cultures, from results that are made by hand.</summary>
public sealed class ReductionTextTests
{
    private const double Degree = Math.PI / 180.0;

    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Far_below_the_match(string culture) => Check("reduction-below.txt", culture, [Tried(Report(SampleReductions.Several()))]);

    [Theory]
    [MemberData(nameof(Names))]
    public void Two_axes_above_the_match_and_without_a_rate(string culture)
    {
        ReductionPoint above = SampleReductions.Point(720.0, Limit.Swings) with { Shares = new TorqueShares(1.5, 37.7, false, 1e-3, -2e-3, 4e-3, 5e-3, 6e-3, 0.16) };
        ReductionPoint none = SampleReductions.Point(216.0, Limit.Friction) with { SafeRateRadiansPerSecond = double.NaN, Facts = SampleReductions.Facts(216.0) with { AccelerationRadiansPerSecondSquared = 0.0 } };
        Check("reduction-axes.txt", culture,
        [
            Report(SampleReductions.Result(720.0, [above]) with { Match = SampleReductions.Match with { MotorInertiaKilogramSquareMetres = 3e-4, LoadTorqueNewtonMetres = 0.5, WormShaftInertiaAtAxisKilogramSquareMetres = 0.0 }, MarginShare = 0.0 }) with { StageKey = null, MaximumPulseRateHertz = double.PositiveInfinity },
            Report(SampleReductions.Result(216.0, [none]) with { AtOptimum = null, Match = SampleReductions.Match with { MotorTorqueNewtonMetres = 0.0 }, Window = SampleReductions.Window with { LeastByLoad = double.NaN, LeastByInertia = double.NaN, MostByInertia = double.NaN, MostBySupply = double.NaN, MostByPulses = double.PositiveInfinity } }) with { Axis = MountAxis.Declination },
        ]);
    }

    [Fact]
    public void Every_bound_has_its_words_and_advice()
    {
        foreach (Limit bound in Enum.GetValues<Limit>())
        {
            using var writer = new StringWriter();
            ReductionPresenter.Write(new Page(writer, colour: false), [Report(SampleReductions.Result(216.0, [SampleReductions.Point(216.0, bound)]))], []);
            Assert.Contains(LimitWords.Short(bound), writer.ToString(), StringComparison.Ordinal);
            Assert.Contains("What to try", writer.ToString(), StringComparison.Ordinal);
        }

        Assert.Equal(Enum.GetValues<Limit>().Length, Enum.GetValues<Limit>().Select(LimitWords.Noun).Distinct().Count());
    }

    [Theory]
    [InlineData(216.0, "10 times smaller than the inertia-matched one of 2186")]
    [InlineData(2200.0, "is about the inertia-matched one of 2186")]
    [InlineData(9000.0, "is 4.1 times the inertia-matched one of 2186")]
    public void The_place_of_the_own_reduction(double own, string words) =>
        Assert.Contains(words, ReductionVerdict.Of(Report(SampleReductions.Result(own, [SampleReductions.Point(own, Limit.Inertia)]))), StringComparison.Ordinal);

    // As if all that is looked for were found to arrive.
    private static ReductionReport Tried(ReductionReport report)
    {
        IReadOnlyList<string> against = ReductionAdvice.AgainstTheBound(report).Settings;
        return report with { AgainstTheBound = against.Count > 0 ? new TypedLine([report.Axis], against) : null, AnotherReduction = ReductionAdvice.Others(report).FirstOrDefault() };
    }

    private static ReductionReport Report(ReductionResult result) => new()
    {
        Axis = MountAxis.Polar, File = "mount.toml", Settings = [], StageKey = "polar.stages.belt.ratio", SlewRateRadiansPerSecond = 3.0 * Degree,
        AccelerationRadiansPerSecondSquared = 2.67 * Degree, RampSeconds = 1.5, ToleranceRadians = 2.0 / 3600.0 * Degree, MaximumPulseRateHertz = 100e3, SupplyVolts = 12.8, Microsteps = 64, FullSteps = true, Result = result,
    };

    private static void Check(string name, string culture, IReadOnlyList<ReductionReport> reports)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            ReductionPresenter.Write(new Page(writer, colour: false), reports, ["out/polar-reduction.csv"]);
            return writer.ToString();
        });
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
