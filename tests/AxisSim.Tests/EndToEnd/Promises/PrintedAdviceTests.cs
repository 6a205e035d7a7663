using AxisSim.Files.Scenarios;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.EndToEnd.Promises;

/// <summary>Every line with settings that a command prints is read again as typed and run, and keeps what is said beside it.</summary>
/// <remarks>No line may pass without a promise: one that no rule knows fails the test, so that a new one must say what it promises.</remarks>
[Trait("speed", "slow")]
public sealed partial class PrintedAdviceTests
{
    private const double Usual = 1.3, Asked = 1.1;

    // Times are printed with three digits.
    private const double ThreeDigits = 0.006;

    public static TheoryData<string> Cases => CommandRuns.Cases;

    [Theory]
    [MemberData(nameof(Cases))]
    public void Simulate(string name)
    {
        CommandRun run = CommandRuns.Of("simulate", name);
        MountAxis axis = MountAxis.Polar;
        foreach (PrintedLine line in PrintedLine.Of(run))
        {
            axis = Axis(line.Beside) ?? Axis(line.Section) ?? axis;
            if (line.Section.StartsWith("Not given, and it decides", StringComparison.Ordinal))
            {
                Match told = Otherwise().Match(line.Beside);
                MountAxis decided = told.Groups[1].Value == "polar" ? MountAxis.Polar : MountAxis.Declination;
                Assert.Equal(told.Groups[2].Value, Words(new TypedMount(name, line.Laid).End(decided).End));
                continue;
            }

            double factor = line.Section.StartsWith("What to try", StringComparison.Ordinal) ? (run.Text.Contains("load factor to 1.3", StringComparison.Ordinal) && Verdict(run, axis) == "arrives" ? Usual : Verdict(run, axis) == "does_not_settle" ? 1.0 : Asked) : line.Beside.Contains("Watch for longer", StringComparison.Ordinal) ? 1.0 : Usual;
            AssertHolds(name, line, [axis], factor);
        }

        // The report says what the screen says.
        Assert.All(PrintedLine.Of(run).SelectMany(line => line.Settings), setting => Assert.Contains(setting, CommandRuns.Of("report", name).Html.Replace("&quot;", "\"", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Envelope_reduction_and_map(string name)
    {
        string[] map = ["--x", "polar.motion.ramp_time=0.3..4 s", "--y", "polar.motion.slew_rate=0.5..6 deg/s", "--grid", "5,5"];
        CommandRun[] runs =
        [
            CommandRuns.Of("envelope", name, "--points", "2"), CommandRuns.Of("reduction", name, "--points", "2"),
            .. ScenarioTakesRamp(name) ? [CommandRuns.Of("map", name, map)] : Array.Empty<CommandRun>(),
        ];
        foreach (PrintedLine line in runs.SelectMany(PrintedLine.Of))
        {
            Assert.True(line.Promised.Count > 0, $"nothing is promised of {string.Join(' ', line.Laid.FileNames.Concat(line.Settings))}: {line.Beside}");
            AssertHolds(name, line, line.Promised, 1.0);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Balance(string name)
    {
        if (name.StartsWith("nominal", StringComparison.Ordinal))
        {
            return;
        }

        CommandRun run = CommandRuns.Of("balance", name);
        IReadOnlyList<PrintedLine> lines = PrintedLine.Of(run);
        foreach (PrintedLine line in lines)
        {
            var before = new TypedMount(name, LaidOver.Nothing);
            MountAxis[] arriving = line.Promised.Count > 0 ? [.. line.Promised] : [.. before.Axes.Where(axis => before.End(axis).End == MoveEnd.Arrives)];
            AssertHolds(name, line, arriving, 1.0);
        }

        // What is said to remain does remain.
        Match remain = Remains().Match(Regex.Replace(run.Text, @"\s+", " "));
        string written = string.Concat(run.Settings.Values);
        string path = Path.Combine(Directory.CreateTempSubdirectory("axissim-balanced-").FullName, "balanced.toml");
        File.WriteAllText(path, written);
        Assert.Equal(written.Length > 0, lines.Any(line => line.Promised.Count > 0));
        string[] all = written.Length > 0 ? ["--settings", path] : [.. lines.SelectMany(line => line.Settings).SelectMany(setting => new[] { "--set", setting })];
        Assert.Contains($"by up to {remain.Groups[1].Value} about the polar axis and {remain.Groups[2].Value} about the declination axis", Regex.Replace(CommandRuns.Run(["balance", CommandRuns.PathOf(name), .. all]).Text, @"\s+", " "), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Compare(string name)
    {
        CommandRun run = CommandRuns.Of("compare", name, "--motors", FewMotors.Value);
        foreach (PrintedLine line in PrintedLine.Of(run))
        {
            if (line.Command.Length == 0)
            {
                CommandRun again = CommandRuns.Of("compare", name, "--motors", FewMotors.Value, "--set", line.Settings.Single());
                Assert.All(Motors(line.Beside, run), motor => Assert.NotEqual("not_settled", again.Document!.Value.GetProperty("candidates").EnumerateArray().First(one => one.GetProperty("motor").GetString() == motor).GetProperty("fate").GetString()));
                continue;
            }

            AssertHolds(name, line, line.Promised, Usual);
            var typed = new TypedMount(name, line.Laid);
            Match told = OnTarget().Match(Regex.Replace(run.Text, @"\s+", " "));
            double seconds = line.Promised.Max(axis => typed.End(axis).SlewSeconds + typed.End(axis).SettleSeconds);
            AssertTime(told.Groups[1].Value, seconds);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Recommend(string name)
    {
        CommandRun run = CommandRuns.Of("recommend", name, "--coarse", "--samples", "1");
        PrintedLine? line = PrintedLine.Of(run).SingleOrDefault();
        if (line is null)
        {
            return;
        }

        string page = Regex.Replace(run.Text, @"\s+", " ");
        var typed = new TypedMount(name, line.Laid);
        Match[] says = [.. Says().Matches(page).Cast<Match>()];
        Assert.NotEmpty(says);
        MountAxis[] axes = [.. says.Select(one => one.Groups[1].Value == "polar" ? MountAxis.Polar : MountAxis.Declination)];
        AssertHolds(name, line, axes, Usual);
        foreach ((Match told, MountAxis axis) in says.Zip<Match, MountAxis>(axes))
        {
            BatchResult end = typed.End(axis);
            AssertTime(told.Groups[2].Value, end.SettleSeconds);
            AssertTime(told.Groups[3].Value, end.SlewSeconds);
        }

        // And the command itself, to the letter.
        string kept = Path.Combine(Directory.CreateTempSubdirectory("axissim-recommended-").FullName, "recommended.toml");
        File.WriteAllText(kept, run.Settings.Values.Single());
        CommandRun simulated = CommandRuns.Run(["simulate", CommandRuns.PathOf(name), "--settings", kept]);
        Assert.All(axes, axis => Assert.Equal("arrives", Verdict(simulated, axis)));
        Assert.Equal(axes.Length == typed.Axes.Count ? 0 : simulated.Code, simulated.Code);
    }

    private static void AssertHolds(string name, PrintedLine line, IReadOnlyList<MountAxis> axes, double factor)
    {
        var typed = new TypedMount(name, line.Laid);
        string what = $"{name}: {string.Join(' ', line.Laid.FileNames.Concat(line.Settings))}\n{line.Beside}";
        foreach (MountAxis axis in axes)
        {
            Assert.True(typed.End(axis).End == MoveEnd.Arrives, $"{what}\n{axis}: {typed.End(axis).End}");
            Assert.True(typed.At(axis, factor) == MoveEnd.Arrives, $"{what}\n{axis} with {factor} times the load: {typed.At(axis, factor)}");
        }

        // The other axis must not be the worse for it.
        foreach (MountAxis axis in typed.Axes.Except(axes).Where(axis => typed.End(axis).End != MoveEnd.Arrives))
        {
            Assert.True(new TypedMount(name, LaidOver.Nothing).End(axis).End != MoveEnd.Arrives, $"{what}\n{axis} fails with it alone");
        }
    }

    private static void AssertTime(string told, double seconds)
    {
        string[] parts = told.Split(' ');
        double value = double.Parse(parts[0], CultureInfo.InvariantCulture) * (parts[1] == "ms" ? 1e-3 : parts[1] == "min" ? 60.0 : 1.0);
        Assert.True(Math.Abs(value - seconds) <= ThreeDigits * seconds + 1e-9, $"{told} told, {seconds} s run");
    }

    private static string Verdict(CommandRun run, MountAxis axis) =>
        run.Document!.Value.GetProperty("axes").EnumerateArray().First(one => one.GetProperty("outcome").GetProperty("axis").GetString() == axis.Key()).GetProperty("outcome").GetProperty("verdict").GetString()!;

    private static IEnumerable<string> Motors(string beside, CommandRun run) =>
        run.Document!.Value.GetProperty("candidates").EnumerateArray().Select(one => one.GetProperty("motor").GetString()!).Where(motor => beside.Contains(motor, StringComparison.Ordinal));

    private static MountAxis? Axis(string words) => words.LastIndexOf("olar axis", StringComparison.Ordinal) is var polar && words.LastIndexOf("eclination axis", StringComparison.Ordinal) is var declination && polar < 0 && declination < 0 ? null
        : words.LastIndexOf("olar axis", StringComparison.Ordinal) > words.LastIndexOf("eclination axis", StringComparison.Ordinal) ? MountAxis.Polar : MountAxis.Declination;

    private static string Words(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "arrives and settles",
        MoveEnd.Stalls => "stalls",
        MoveEnd.ClutchSlips => "slips in its clutch",
        MoveEnd.DoesNotSettle => "arrives, but does not settle in the time watched",
        _ => "cannot be simulated",
    };

    private static bool ScenarioTakesRamp(string name) => new TypedMount(name, LaidOver.Nothing).Setup.Polar!.Motion.Ramp.Seconds is not null;

    /// <summary>Four motors of the catalogue.</summary>
    private static readonly Lazy<string> FewMotors = new(() =>
    {
        string[] lines = [.. File.ReadAllLines(Repository.PathOf("catalogues", "motors.csv")).Where(line => !line.StartsWith('#'))];
        string path = Path.Combine(Directory.CreateTempSubdirectory("axissim-motors-").FullName, "motors.csv");
        File.WriteAllLines(path, [lines[0], .. lines.Skip(1).Where((_, i) => i % 3 == 1)]);
        return path;
    });

    [GeneratedRegex(@"otherwise the (polar|declination) axis ([^.]+)\.$")]
    private static partial Regex Otherwise();

    [GeneratedRegex(@"Then there remain (\S+ N m) about the polar axis and (\S+ N m) about")]
    private static partial Regex Remains();

    [GeneratedRegex(@"is on target, settled, (\S+ \w+) after the start")]
    private static partial Regex OnTarget();

    [GeneratedRegex(@"It says: the (polar|declination) axis arrives and settles (\S+ \w+) after the slew of (\S+ \w+)\.")]
    private static partial Regex Says();
}
