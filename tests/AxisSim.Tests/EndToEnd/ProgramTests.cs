using System.Text.Json;
using AxisSim.Cli;
using AxisSim.Cli.Hosting;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Golden;
using AxisSim.Tests.Invented;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The program end to end, in process: exit codes, messages, files.</summary>
public sealed class ProgramTests : IDisposable
{
    // A short move of the benchmark case: a second of simulated time, so that the searches take moments.
    private static readonly string[] Short = ["--set", "move.end_polar=1 deg", "--set", "move.observe=1.5 s", "--set", "polar.motion.ramp_time=0.2 s"];

    private static readonly string Nominal = Repository.PathOf("scenarios", "nominal.toml");
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Help_shows_every_command_and_every_exit_code()
    {
        (int code, string output, string error) = Run("--help");
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.All(["simulate", "check", "new", "curve", "balance", "envelope", "map", "merge", "130"], word => Assert.Contains(word, output, StringComparison.Ordinal));
    }

    [Fact]
    public void The_version_stands_alone() => Assert.Matches(@"^\d+\.\d+\.\d+\n$", Run("--version").Output);

    [Theory]
    [InlineData("no command", "")]
    [InlineData("did you mean simulate?", "simulat FILE")]
    [InlineData("no FILE", "simulate")]
    [InlineData("did you mean --step?", "simulate FILE --stp 50us")]
    [InlineData("did you mean --step?", "simulate --stp=50us FILE")]
    [InlineData("write: --step 50us", "simulate FILE --step 50")]
    [InlineData("a number without its unit", "simulate --step 0 FILE")]
    [InlineData("from 0.1us to 1000us", "simulate --step 0us FILE")]
    [InlineData("from 0.1us to 1000us", "simulate FILE --step -5us")]
    [InlineData("not a finite number", "simulate FILE --step NaN")]
    [InlineData("polar, declination or both", "simulate FILE --axis hour")]
    [InlineData("no [declination] section", "simulate FILE --axis declination")]
    [InlineData("text or json", "curve FILE --format xml")]
    [InlineData("given twice", "simulate FILE --axis polar --axis polar")]
    [InlineData("one FILE is wanted", "simulate FILE FILE")]
    [InlineData("lacks its value", "simulate FILE --set")]
    [InlineData("no such file", "simulate missing.toml")]
    [InlineData("axissim new", "check missing.toml")]
    [InlineData("no parts to shift", "balance FILE")]
    [InlineData("a number without its unit", "simulate FILE --set polar.motion.ramp_time=2")]
    [InlineData("a comma is not a decimal point", "simulate FILE --set polar.motion.ramp_time=1,5s")]
    [InlineData("polar.load.inertia", "simulate FILE --set polar.load.inertia=-3kg*m^2")]
    [InlineData("polar.drive.slew_current", "simulate FILE --set polar.drive.slew_curent=1A")]
    [InlineData("sections site, polar.*", "check FILE --set foo.bar=1")]
    [InlineData("no name of a folder", "simulate FILE --out EMPTY")]
    [InlineData("no name of a folder", "curve FILE --out EMPTY")]
    [InlineData("which is a file and not a folder", "simulate FILE --out FILE")]
    [InlineData("which is a file and not a folder", "simulate FILE --out FILE/a/b")]
    [InlineData("an empty name", "new EMPTY")]
    public void Bad_input_is_exit_2_with_a_message_that_helps(string message, string line)
    {
        foreach (string culture in new[] { "", "fr-FR", "tr-TR" })
        {
            string[] args = [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(arg => arg == "EMPTY" ? "" : arg.Replace("FILE", Nominal, StringComparison.Ordinal))];
            (int code, string output, string error) = Cultures.Under(culture, () => Run(args));
            Assert.Equal(2, code);
            Assert.Contains(message, error + output, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void All_problems_are_reported_at_once()
    {
        (int code, _, string error) = Run("simulate", "missing.toml", "--axis", "x", "--step", "50", "--format", "xml");
        Assert.Equal(2, code);
        Assert.Contains("4 problems", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_short_move_arrives_under_a_french_locale_and_writes_its_files()
    {
        string target = Path.Combine(folder, "a", "b");
        (int code, string output, string error) = Cultures.Under("fr-FR", () => Run(["simulate", "--out", target, .. Short, Nominal]));
        Assert.True(code == 0, output + error);
        Assert.StartsWith("ARRIVES", output, StringComparison.Ordinal);
        string[] expected = ["outcome.json", "polar-close-up.csv", "polar-move.png", "polar-move.svg", "polar-torque-speed.png", "polar-torque-speed.svg", "polar-trace.csv"];
        Assert.Equal(expected, Directory.GetFiles(target).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal));
        Assert.All(expected, name => Assert.Contains(Path.Combine(target, name), output, StringComparison.Ordinal));
        Assert.Equal("outcome.json", expected.MaxBy(name => output.IndexOf(Path.Combine(target, name), StringComparison.Ordinal)));
    }

    [Fact]
    public void Without_its_trace_there_is_no_outcome_not_even_that_of_an_earlier_run()
    {
        Directory.CreateDirectory(Path.Combine(folder, "polar-trace.csv"));
        File.WriteAllText(Path.Combine(folder, "outcome.json"), "{}");
        (int code, _, string error) = Run(["simulate", "--out", folder, .. Short, Nominal]);
        Assert.Equal(2, code);
        Assert.Contains("a directory where a file was to be written", error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void A_trace_of_every_step_of_a_long_move_tells_its_size()
    {
        MoveReport Lasting(double seconds)
        {
            double[] values = new double[TraceQuantities.Count];
            var trace = new Trace();
            trace.Add(0.0, seconds, values, values, values);
            MoveReport report = SampleReports.Arriving();
            return report with { Results = [report.Results[0] with { Trace = trace, Step = new StepChoice(50e-6, null) }] };
        }

        Assert.Null(MoveFiles.Warning(Lasting(1.0)));

        // Measured: 251.5 MB for the 700,000 steps of the benchmark case.
        Assert.Contains("about 252 MB", MoveFiles.Warning(Lasting(35.0)), StringComparison.Ordinal);
    }

    [Fact]
    public void With_every_step_the_table_is_longer_and_the_figures_are_the_same()
    {
        string short1 = Path.Combine(folder, "stretches"), full = Path.Combine(folder, "steps");
        Assert.Equal(0, Run(["simulate", "--out", short1, .. Short, Nominal]).Code);
        Assert.Equal(0, Run(["simulate", "--full", "--out", full, .. Short, Nominal]).Code);
        string[] stretches = File.ReadAllLines(Path.Combine(short1, "polar-trace.csv")), steps = File.ReadAllLines(Path.Combine(full, "polar-trace.csv"));
        Assert.StartsWith("time_from_s,time_to_s,", stretches[0], StringComparison.Ordinal);
        Assert.StartsWith("time_s,", steps[0], StringComparison.Ordinal);
        Assert.InRange(stretches.Length - 1, 2, TraceRecorder.MostStretches);
        Assert.True(steps.Length > stretches.Length);
        foreach (string file in new[] { "polar-move.png", "polar-move.svg", "polar-close-up.csv", "outcome.json" })
        {
            Assert.Equal(File.ReadAllBytes(Path.Combine(short1, file)), File.ReadAllBytes(Path.Combine(full, file)));
        }
    }

    [Fact]
    public void A_closed_standard_output_is_exit_2_and_no_fault_of_the_program()
    {
        using var closed = new ClosedWriter();
        using var error = new StringWriter();
        Assert.Equal(2, Program.Run(["check", Nominal], closed, error));
        Assert.Contains("standard output is closed", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("fault of the program", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Json_is_alone_on_the_output_and_says_what_the_exit_code_says()
    {
        (int code, string output, _) = Run(["simulate", "--format", "json", .. Short, Nominal, "--set", "polar.motor.holding_torque=0.03 N*m", "--set", "polar.load.imbalance=-90 N*m", "--set", "polar.load.phase=90 deg"]);
        Assert.Equal(3, code);
        using JsonDocument document = JsonDocument.Parse(output);
        JsonElement root = document.RootElement;
        Assert.Equal(1, root.GetProperty("schema").GetInt32());
        Assert.Equal(3, root.GetProperty("exit_code").GetInt32());
        Assert.Equal(64, root.GetProperty("scenario").GetProperty("sha256").GetString()!.Length);
        Assert.Equal("stalls", root.GetProperty("axes")[0].GetProperty("outcome").GetProperty("verdict").GetString());
        Assert.NotEqual(0, root.GetProperty("axes")[0].GetProperty("cures").GetArrayLength());
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_told_before_the_work()
    {
        string file = Path.Combine(folder, "file");
        File.WriteAllText(file, "");
        (int code, string output, string error) = Run(["simulate", Nominal, "--out", Path.Combine(file, "sub")]);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains("--out", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_scenario_passes_its_own_check_and_is_not_replaced()
    {
        string file = Path.Combine(folder, "mount.toml");
        Assert.Equal(0, Run("new", file).Code);
        Assert.StartsWith("No problems", Run("check", file).Output, StringComparison.Ordinal);
        File.AppendAllText(file, "# mine\n");
        (int code, _, string error) = Run("new", file);
        Assert.Equal(2, code);
        Assert.Contains("--force", error, StringComparison.Ordinal);
        Assert.EndsWith("# mine\n", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(0, Run("new", "--force", file).Code);
        Assert.DoesNotContain("# mine", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_as_json_carries_its_problems()
    {
        (int code, string output, string error) = Run("check", Nominal, "--format", "json", "--set", "polar.worm.teeth=1.5");
        Assert.Equal(2, code);
        Assert.Empty(error);
        using JsonDocument document = JsonDocument.Parse(output);
        Assert.Equal("polar.worm.teeth", document.RootElement.GetProperty("problems")[0].GetProperty("key").GetString());
    }

    [Fact]
    public void Balance_says_where_the_counterweight_goes_and_that_balances_it()
    {
        string file = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml");
        (int code, string output, _) = Run("balance", file);
        Assert.Equal(0, code);
        Assert.StartsWith("OUT OF BALANCE", output, StringComparison.Ordinal);
        string setting = output[output.IndexOf("counterweight.distance=", StringComparison.Ordinal)..].Split('"')[0];
        string after = Run("balance", file, "--set", setting).Output;
        Assert.Contains("Leave the counterweight", after, StringComparison.Ordinal);
    }

    [Fact]
    public void Balance_writes_a_picture_and_a_document()
    {
        string folder = Directory.CreateTempSubdirectory("axissim-balance-").FullName;
        try
        {
            (int code, string output, string error) = Run("balance", Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), "--out", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Equal(["balance.json", "balance.png", "balance.svg", "balanced.toml"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
            Assert.Contains(Path.Combine(folder, "balance.png"), output, StringComparison.Ordinal);
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "balance.json")));
            JsonElement polar = document.RootElement.GetProperty("graded")[0];
            Assert.Equal("polar", polar.GetProperty("axis").GetString());
            Assert.Equal(1.8, polar.GetProperty("hidden_newton_metres").GetDouble(), 1e-9); // 1.2 N m x 1.5 for cold grease
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Balance_steps_are_settings_that_balance()
    {
        // Paper: bodies that all lie 60 mm ahead and 20 mm to the left must go back and to the right by as much.
        string file = Repository.PathOf("scenarios", "light-refractor.toml");
        string[] lines = File.ReadAllLines(file);
        string[] off = [.. BodiesOf(lines).SelectMany(body => new[] { "--set", $"payload.{body}.forward=60 mm", "--set", $"payload.{body}.side=20 mm" })];
        DirectoryInfo folder = Directory.CreateTempSubdirectory("axissim-balance-");
        string output = Run(["balance", file, .. off, "--out", folder.FullName]).Output;
        Assert.Contains("60 mm back", output, StringComparison.Ordinal);
        Assert.Contains("20 mm to the right, as seen from the eyepiece end", output, StringComparison.Ordinal);

        // The settings file carries what was typed as well, as far as it does not replace it.
        string kept = Path.Combine(folder.FullName, "balanced.toml");
        Assert.Contains($"axissim simulate {file} --settings {kept}\n", output, StringComparison.Ordinal);
        Assert.StartsWith("BALANCED", Run("balance", file, "--settings", kept).Output, StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void Stopped_is_exit_130_and_writes_nothing()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = Program.Run(["simulate", Nominal, "--out", folder], new Host(output, error) { Stop = stop.Token });
        Assert.Equal(130, code);
        Assert.Contains("stopped", error.ToString(), StringComparison.Ordinal);
        Assert.Empty(output.ToString());
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void Stopped_half_way_through_its_files_it_names_those_that_are_whole()
    {
        using var stop = new CancellationTokenSource();
        using var error = new StringWriter();
        var host = new Host(TextWriter.Null, error) { Stop = stop.Token, StoppedCode = () => 143 };
        var output = new OutputFolder(folder, host);
        output.Write("one.csv", stream => stream.Write("1"u8));
        Assert.Throws<OperationCanceledException>(() => output.Write("two.csv", stream =>
        {
            stream.Write("2"u8);
            stop.Cancel();
            stream.Write("2"u8);
        }));
        string whole = Path.Combine(folder, "one.csv");
        Assert.Equal([whole], Directory.GetFiles(folder));
        Assert.Equal(143, Program.Run(["simulate", Nominal], host));
        Assert.Contains("not complete; this file of it is whole: " + whole, error.ToString(), StringComparison.Ordinal);
    }

    private static IEnumerable<string> BodiesOf(string[] lines)
    {
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("[[payload]]", StringComparison.Ordinal))
            {
                yield return lines[i + 1].Split('"')[1];
            }
        }
    }

    /// <summary>A writer on a descriptor that the caller has closed.</summary>
    private sealed class ClosedWriter : StringWriter
    {
        public override void Flush() => throw new UnauthorizedAccessException("Access to the path is denied.");
    }
}
