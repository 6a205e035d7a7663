using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Tests.Unit.Core.Recommendations;

namespace AxisSim.Tests.Golden;

/// <summary>The page of a recommendation word for word, under several cultures, from results that are made by hand.</summary>
public sealed class RecommendTextTests
{
    private const double Degree = Math.PI / 180.0;
    private static readonly AxisSettings Slow = new(3.42 * Degree, 1.2, 0.9, 0.585, 0.35, double.PositiveInfinity);
    private static readonly AxisSettings Quick = new(6.5 * Degree, 0.5, 1.0, 0.6, 0.35, 200.0 * Math.PI / 30.0);
    private static readonly FrontPoint Chosen = new(Slow, 21.7, 0.62, 1.48, 41.2);

    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void An_answer(string culture) => Check("recommend-answer.txt", culture, Report(Answer(), new BatchResult(BatchEnd.Arrives, double.NaN, 21.7, 0.62, 41.2)));

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_holds(string culture) => Check("recommend-nothing.txt", culture, Report(
        Answer() with
        {
            Chosen = null, Nearest = new FrontPoint(Quick, 200.0, 0.4, 0.98, 70.0), Binding = null, Abort = null, Front = [], FailingBelow = [],
            Sensitivities = [new(MountChange.BetterBalance, 5.46 * Degree), new(MountChange.MoreVoltage, double.NaN)],
        },
        null));

    [Theory]
    [InlineData(Limit.SupplyVoltage, "the supply voltage limits the torque above 2.1 deg/s")]
    [InlineData(Limit.Imbalance, "lifting the heavy side")]
    [InlineData(Limit.Combined, "several loads together")]
    [InlineData(Limit.Swings, "makes the rotor swing until it falls out of step")]
    [InlineData(Limit.Clutch, "the clutch slips")]
    [InlineData(Limit.PulseRate, "the greatest pulse rate of the controller ends the search at 6.51 deg/s")]
    [InlineData(Limit.MoveLength, "both ramps together take the whole move")]
    [InlineData(Limit.MotorSpeed, "less than 2 % of its holding torque")]
    public void What_binds_in_words(Limit limit, string words)
    {
        AxisRecommendation answer = Answer();
        string text = BindingText.Of(answer with { Binding = answer.Binding! with { Limit = limit } }, RecommendAim.Fastest);
        Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Contains("no more than 3.42 deg/s holds", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Heat_binds_in_words()
    {
        AxisRecommendation answer = Answer();
        Assert.Contains("the limit of its insulation", BindingText.Of(answer with { Binding = answer.Binding! with { Limit = Limit.Temperature } }, RecommendAim.Fastest), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20.943951023931955, "200 rpm")]
    [InlineData(20.0, "20 rad/s")]
    [InlineData(double.PositiveInfinity, "never")]
    public void A_changeover_is_written_as_a_scenario_reads_it(double speed, string text) => Assert.Equal(text, SettingTexts.Changeover(speed));

    private static AxisRecommendation Answer()
    {
        var own = new CheckMove(CheckMoveKind.Own, MountAxis.Polar, PierSide.West, new(-5.0 * Degree, 10.0 * Degree), new(-75.0 * Degree, 55.0 * Degree));
        var opposed = new CheckMove(CheckMoveKind.OpposedAtStart, MountAxis.Polar, PierSide.East, new(-5.0 * Degree, 140.0 * Degree), new(-95.0 * Degree, 140.0 * Degree));
        ToleranceFactors hard = ToleranceFactors.Corner(new Tolerances(), ToleranceFactors.HardMask);
        return new AxisRecommendation
        {
            Axis = MountAxis.Polar, Chosen = Chosen, LoadFactor = 1.3, ResolutionRadiansPerSecond = 0.01 * Degree, Moves = [own, opposed, opposed with { Kind = CheckMoveKind.HelpedAtEnd }],
            Deciding = [new LoadCase(opposed, hard)],
            Worst = new WorstCorner(hard, 1.31, 2.1, [new(ToleranceKind.Imbalance, 2.2, 2.0), new(ToleranceKind.Friction, 2.4, 1.7)], 7),
            Front = [new(Quick, 13.4, 0.9, 1.2, 55.0), Chosen, new(Slow with { SlewCurrentAmperes = 0.45 }, 40.0, 0.8, 6.0, 25.0)],
            Verified = new Verification(387, 128, 3, 0),
            Currents = new HoldingCurrents(0.585, CurrentReason.Settling, 0.0408, 0.35, CurrentReason.Resolution, 0.0, true),
            Binding = new Binding(Limit.SupplyVoltage, null, new GreatestRate
            {
                RampSeconds = 1.2, RateRadiansPerSecond = 3.42 * Degree, Cap = null, TopRadiansPerSecond = 6.51 * Degree, TopLimit = Limit.PulseRate,
            }, 2.1 * Degree),
            Sensitivities = [new(MountChange.MoreVoltage, 4.28 * Degree), new(MountChange.MoreReduction, 3.1 * Degree), new(MountChange.BetterBalance, 3.62 * Degree)],
            Probability = new StallProbability(200, 0, 1, 0.0149),
            Abort = new Abort(2.05 * Degree, 1.2, new Coast(CoastEnd.Locks, 6.8e-4, 0.05, 49.6, true, false), new Coast(CoastEnd.Stops, 3.9e-3, 0.15, 0.0, false, true), false),
            FailingBelow = [3.35 * Degree],
            Runs = 8123,
        };
    }

    private static RecommendReport Report(AxisRecommendation answer, BatchResult? run)
    {
        Core.Mount.MountSetup setup = Setups.Of("heavy-reflector");
        return new RecommendReport
        {
            Name = "heavy reflector", File = "mount.toml", Settings = ["polar.drive.microsteps=32"], Aim = RecommendAim.Balanced, Margin = 0.3, Tolerances = new Tolerances(), Coarse = false, Together = 0,
            Axes = [new RecommendedAxis(answer, AxisSettings.Of(setup, MountAxis.Polar), setup.Polar!, run, 50e-6, 20e-6)],
            Recommended = answer.Chosen is { } chosen ? SettingTexts.Of(MountAxis.Polar, chosen.Settings) : [],
        };
    }

    private static void Check(string name, string culture, RecommendReport report)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            RecommendPresenter.Write(new Page(writer, colour: false), report, ["out/recommend.json"]);
            return writer.ToString();
        });
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
