using AxisSim.Cli.Text.Envelopes;
using AxisSim.Cli.Text;
using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Golden;

/// <summary>The page of an envelope word for word, under several cultures, from results that are made by hand.</summary>
public sealed class EnvelopeTextTests
{
    private const double Degree = Math.PI / 180.0;

    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Three_masses_of_which_one_never_arrives(string culture) => Check("envelope-masses.txt", culture,
    [
        Report(MountAxis.Polar, 5.0, Fails(0.4, 3.56), [
            new("8 kg", "payload.tube.mass=8 kg", [Fails(0.1, 1.2), Fails(0.4, 4.62), Ends(1.6, 6.5, Limit.PulseRate)]),
            new("10 kg", "payload.tube.mass=10 kg", [Fails(0.1, 0.88), Fails(0.4, 3.56) with { Island = new RateStretch(4.1 * Degree, 4.9 * Degree) }, Fails(1.6, 6.3)]),
            new("12 kg", "payload.tube.mass=12 kg", [None(0.1), None(0.4), Fails(1.6, 2.0) with { Failure = MoveEnd.ClutchSlips }]),
        ]),
    ]);

    [Theory]
    [MemberData(nameof(Names))]
    public void Two_axes_with_room_and_little_room(string culture) => Check("envelope-axes.txt", culture,
    [
        Report(MountAxis.Polar, 3.0, Fails(1.5, 3.2), [new("this scenario", null, [Fails(0.5, 2.1), Fails(1.5, 3.2), Ends(20.0, 4.5, Limit.MoveLength), Ends(500.0, double.NaN, Limit.MoveLength) with { Tried = 0 }])]) with { Key = null },
        Report(MountAxis.Declination, 3.0, Ends(1.5, 12.0, Limit.MotorSpeed), [new("this scenario", null, [Ends(1.5, 12.0, Limit.MotorSpeed)])]) with { Key = null },
    ]);

    [Theory]
    [InlineData("ROOM: with", 1.0, 3.0, null)]
    [InlineData("LITTLE ROOM: with", 2.9, 3.0, null)]
    [InlineData("LITTLE ROOM: with", 3.0, 3.0, null)]
    [InlineData("TOO FAST: with", 3.005, 3.0, null)]
    [InlineData("ROOM: with", 3.005, 3.0, Limit.PulseRate)]
    [InlineData("NEVER THAT FAST: with", 5.0, 3.0, Limit.MoveLength)]
    public void The_verdict(string words, double asked, double safe, Limit? limit)
    {
        EnvelopeReport report = Report(MountAxis.Polar, asked, limit is { } end ? Ends(1.0, safe, end) : Fails(1.0, safe), []);
        Assert.StartsWith("Polar axis: " + words, EnvelopeVerdict.Of(report), StringComparison.Ordinal);
        Assert.Equal(words.StartsWith("ROOM", StringComparison.Ordinal), EnvelopeVerdict.Good(report));
    }

    [Fact]
    public void The_verdict_without_a_safe_rate_and_without_a_rate_to_try()
    {
        EnvelopeReport none = Report(MountAxis.Polar, 3.0, None(0.1), []);
        Assert.Contains("NO RATE ARRIVES: with the ramp of 0.1 s in the file even 0.02 deg/s stalls", EnvelopeVerdict.Of(none), StringComparison.Ordinal);
        Assert.Contains("NO SAFE RATE: with", EnvelopeVerdict.Of(none with { LoadFactor = 1.3 }), StringComparison.Ordinal);
        GreatestRate untried = Ends(500.0, double.NaN, Limit.MoveLength) with { Tried = 0 };
        Assert.Contains("no rate can be tried with the ramp of 8.33 min in the file: the axis turns 90 deg", EnvelopeVerdict.Of(Report(MountAxis.Polar, 3.0, untried, [])), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_rates_with_load_in_hand_are_called_safe()
    {
        EnvelopeReport plain = Report(MountAxis.Polar, 2.0, Fails(1.0, 3.0), []);
        Assert.DoesNotContain("safe", EnvelopeVerdict.Of(plain), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("the greatest safe slew rate (with 1.3 times the load) is 3 deg/s", EnvelopeVerdict.Of(plain with { LoadFactor = 1.3 }), StringComparison.Ordinal);
    }

    private static GreatestRate Fails(double ramp, double rate) => Ends(ramp, rate, Limit.PulseRate) with
    {
        Cap = null, FirstFailingRadiansPerSecond = (rate + 0.02) * Degree, Failure = MoveEnd.Stalls,
    };

    private static GreatestRate None(double ramp) => Fails(ramp, 0.0) with { RateRadiansPerSecond = double.NaN };

    private static GreatestRate Ends(double ramp, double rate, Limit limit) => new()
    {
        RampSeconds = ramp, RateRadiansPerSecond = rate * Degree, Cap = limit, TopRadiansPerSecond = 6.51 * Degree, TopLimit = limit, LeastTriedRadiansPerSecond = 0.54 * Degree, Tried = 40,
    };

    private static EnvelopeReport Report(MountAxis axis, double asked, GreatestRate own, IReadOnlyList<EnvelopeLine> lines) => new()
    {
        Axis = axis, LoadFactor = 1.0, File = "mount.toml", Key = "payload.tube.mass", AskedRadiansPerSecond = asked * Degree, Own = own, Lines = lines,
        ResolutionRadiansPerSecond = 0.02 * Degree, DistanceRadians = 90.0 * Degree, PulseLimitRadiansPerSecond = 6.51 * Degree,
    };

    private static void Check(string name, string culture, IReadOnlyList<EnvelopeReport> reports)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            TypedLine[] tries = reports.Count == 1 ? [] : [new([.. reports.Select(report => report.Axis)], [.. reports.Select(report => report.Axis.Key() + ".motion.slew_rate=2.1 deg/s")])];
            EnvelopePresenter.Write(new Page(writer, colour: false), reports, tries, ["out/polar-envelope.csv"]);
            return writer.ToString();
        });
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
