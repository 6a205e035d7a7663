using System.Globalization;
using AxisSim.Files.Scenarios;
using Xunit.Abstractions;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Thousands of damaged scenarios: each is accepted or refused with a message, never an exception.</summary>
public sealed class MutationTests(ITestOutputHelper output)
{
    private const int PerScenario = 500;
    private const int DefaultSeed = 20250611;

    private static readonly string[] Numbers = ["nan", "inf", "-inf", "1e999", "-1e308", "1e-320", "0", "-0.0", "99999999999999999999", "1,5", "1.5.5", "0x1F", "٣", "1_000", "--1", "+", "1e"];
    private static readonly string[] Units = ["kg", "N*m", "A", "A rms", "deg/s", "x sidereal", "steps/s", "%", "furlong", "", "µF", "Ω", "N m", "rpm", "°C", "m/s^^2", "*", "/", "N*m/"];
    private static readonly char[] Letters = ['"', '\'', '[', ']', '{', '}', '=', '.', ',', '#', '\n', '\\', '\0', '\t', '\u00e9', '\ud83d', '\u200b', '-', '9', 'e', ' '];

    [Fact]
    [Trait("speed", "slow")]
    public void Every_mutation_is_accepted_or_refused_with_a_message()
    {
        string? given = Environment.GetEnvironmentVariable("AXISSIM_FUZZ_SEED");
        int seed = given is null ? DefaultSeed : int.Parse(given, CultureInfo.InvariantCulture);
        output.WriteLine($"seed {seed} (AXISSIM_FUZZ_SEED replays another)");
        string[] scenarios = [.. Repository.Scenarios.Select(File.ReadAllText), ScenarioTemplate.Text];
        int accepted = 0, refused = 0;
        for (int which = 0; which < scenarios.Length; which++)
        {
            for (int i = 0; i < PerScenario; i++)
            {
                var random = new Random(seed + (which * 100_003) + i);
                string text = scenarios[which];
                for (int slips = random.Next(1, 4); slips > 0; slips--)
                {
                    text = Mutate(text, scenarios, random);
                }

                string[] settings = random.Next(4) == 0 ? [Mutate("polar.drive.slew_current=1.2 A", ["payload.tube.mass=16 kg"], random)] : [];
                ScenarioResult result = Read(text, settings, $"seed {seed}, scenario {which}, mutation {i}");
                Check(result);
                (accepted, refused) = result.Scenario is null ? (accepted, refused + 1) : (accepted + 1, refused);
            }
        }

        output.WriteLine($"{accepted} accepted, {refused} refused");
        Assert.True(accepted + refused >= 2000);
        Assert.True(accepted > 100 && refused > 1000, "the mutations are too mild or too wild to test both ways");
    }

    [Theory]
    [InlineData("a=", "[", 300_000, "")]
    [InlineData("a=", "{a=", 200_000, "")]
    [InlineData("", "a.", 300_000, "a=1")]
    [InlineData("[", "a.", 300_000, "a]")]
    [InlineData("", "[x]\n", 100_000, "")]
    [InlineData("", "[[payload]]\nname=\"a\"\n", 3_000, "")]
    [InlineData("name=\"\"\"", "x\n", 300_000, "")]
    [Trait("speed", "slow")]
    public void Endless_repetition_is_refused_too(string head, string body, int count, string tail)
    {
        string text = head + string.Concat(Enumerable.Repeat(body, count)) + tail;
        ScenarioResult result = Read(text, [], body);
        Assert.Null(result.Scenario);
        Check(result);
    }

    [Theory]
    [InlineData("k{0} = 1\n", 60_000)]
    [InlineData("[s{0}]\nk = 1\n", 50_000)]
    [InlineData("[[payload]]\nname = \"b{0}\"\nmas = \"1 kg\"\n", 15_000)]
    [InlineData("[[payload]]\nname = \"b{0}\"\nshape = \"point\"\nmass = \"1 kg\"\nout = \"0 m\"\n", 10_000)]
    [InlineData("[polar.p{0}.q]\n", 40_000)]
    public void Endless_variety_is_refused_with_a_bounded_list(string line, int count)
    {
        string text = "format = 1\n" + string.Concat(Enumerable.Range(0, count).Select(i => line.Replace("{0}", i.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)));
        ScenarioResult result = Read(text, [], line);
        Assert.Null(result.Scenario);
        Check(result);
        Assert.InRange(result.Problems.Count, 1, 200);
    }

    private static ScenarioResult Read(string text, string[] settings, string what)
    {
        try
        {
            return ScenarioReader.ReadText(text, "mutant.toml", settings);
        }
        catch (Exception error)
        {
            throw new InvalidOperationException($"{what}: an exception instead of a message\n{text[..Math.Min(text.Length, 4000)]}", error);
        }
    }

    private static void Check(ScenarioResult result)
    {
        Assert.Equal(result.Scenario is null, result.Problems.Any(problem => problem.Severity == ProblemSeverity.Error));
        foreach (Problem problem in result.Problems)
        {
            string message = problem.ToString();
            Assert.DoesNotContain('\n', message);
            Assert.DoesNotContain("Exception", message, StringComparison.Ordinal);
            Assert.NotEmpty(problem.Found);
        }

        if (result.Scenario is { Setup: var setup })
        {
            double[] numbers =
            [
                setup.Move.Start.PolarRadians, setup.Move.End.PolarRadians, setup.Move.SettleToleranceRadians, setup.Load.DeclinationInertiaKilogramSquareMetres, .. setup.Load.PolarInertia, .. setup.Load.PolarGravity,
                .. new[] { setup.Polar, setup.Declination }.OfType<AxisSim.Core.Mount.AxisModel>().SelectMany(axis => new[]
                {
                    axis.Motor.HoldingTorqueNewtonMetres, axis.Motor.RotorInertiaKilogramSquareMetres, axis.Drive.SupplyVolts, axis.Train.TotalRatio, axis.Train.StiffnessNewtonMetresPerRadian,
                    axis.Motion.SlewRateRadiansPerSecond, axis.Motion.PeakAcceleration, axis.Bearings.BreakawayNewtonMetres,
                }),
            ];
            Assert.All(numbers, number => Assert.True(double.IsFinite(number)));
        }
    }

    private static string Mutate(string text, string[] others, Random random)
    {
        int at = random.Next(text.Length + 1), length = Math.Min(random.Next(1, 12), text.Length - at);
        string[] lines = text.Split('\n');
        int line = random.Next(lines.Length), other = random.Next(lines.Length);
        switch (random.Next(12))
        {
            case 0: return text.Remove(at, length);
            case 1: return text.Insert(at, text.Substring(at, length));
            case 2: return text.Insert(at, Letters[random.Next(Letters.Length)].ToString());
            case 3: return text[..at];
            case 4: (lines[line], lines[other]) = (lines[other], lines[line]); break;
            case 5: lines[line] = ""; break;
            case 6: lines[line] += "\n" + lines[line]; break;
            case 7: lines[line] = Replace(lines[line], @"-?[0-9][0-9.e-]*", Numbers[random.Next(Numbers.Length)]); break;
            case 8: lines[line] = Replace(lines[line], "(?<=[0-9] )[A-Za-z*/^% ]+(?=\")", Units[random.Next(Units.Length)]); break;
            case 9: (lines[line], lines[other]) = (Key(lines[line]) + Rest(lines[other]), Key(lines[other]) + Rest(lines[line])); break;
            case 10: lines[line] = Replace(lines[line], "(?<==).*", new[] { " true", " [1, 2]", " { a = 1 }", " 1979-05-27", " \"\"", " 'x'", "" }[random.Next(7)]); break;
            default:
                string donor = others[random.Next(others.Length)];
                int from = random.Next(donor.Length);
                return text.Insert(at, donor.Substring(from, Math.Min(random.Next(1, 400), donor.Length - from)));
        }

        return string.Join('\n', lines);
    }

    private static string Replace(string text, string pattern, string value) =>
        System.Text.RegularExpressions.Regex.Replace(text, pattern, value.Replace("$", "$$", StringComparison.Ordinal));

    private static string Key(string line) => line.IndexOf('=', StringComparison.Ordinal) is int at and >= 0 ? line[..at] : line;

    private static string Rest(string line) => line.IndexOf('=', StringComparison.Ordinal) is int at and >= 0 ? line[at..] : "";
}
