using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Numerics;

/// <summary>The C programs of benchmarks/peers take the same steps as this program; else their times would say nothing.</summary>
[Trait("needs", "gcc")]
[Trait("speed", "slow")]
public sealed class PeersInCTests
{
    /// <summary>
    /// Of each quantity's size over the move. Both sides round differently, which grows by the time of the fastest swing to 1e-11; a term that is
    /// missing, or of another order, shows at 1e-5 and above.
    /// </summary>
    private const double Relative = 1e-9;

    private static readonly (string Name, double Size)[] s_quantities =
        [("rotor", 1000.0), ("rotor_speed", 38.0), ("axis", 1.5), ("axis_speed", 0.05), ("ia", 1.5), ("ib", 1.5)];

    [SkippableTheory]
    [InlineData("scalar", "scalar.c command.c case.c")]
    [InlineData("scalar rearranged", "-DREARRANGED scalar.c command.c case.c")]
    [InlineData("team", "team.c lanes.c command.c case.c")]
    [InlineData("team with two doubles a vector", "-DWIDTH=2 team.c lanes.c command.c case.c")]
    public void SlewIsTheSame(string program, string sources)
    {
        string compiler = RequiredTool.Find("gcc", "gcc libc6-dev");
        string folder = Directory.CreateTempSubdirectory("axissim-peers").FullName;
        try
        {
            string built = Path.Combine(folder, "program");
            Run(compiler, $"-std=gnu11 -O2 -march=native -o {built} {sources} -lm", Repository.PathOf("benchmarks", "peers"));
            string[] lines = Run(built, "states", folder).Split('\n', StringSplitOptions.RemoveEmptyEntries);
            JsonElement[] states = [.. lines.Select(line => JsonDocument.Parse(line).RootElement)];
            Check(program, states, "helping", 4.0);
            Check(program, states, "opposing", -4.0);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Check(string program, JsonElement[] states, string name, double imbalance)
    {
        JsonElement[] mine = [.. states.Where(s => s.GetProperty("state").GetString() == name)];
        Assert.NotEmpty(mine);
        Core.Mount.MountSetup setup = BenchmarkCase.Slew(imbalance);
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
        var none = default(NoObserver);
        foreach (JsonElement state in mine)
        {
            double seconds = state.GetProperty("seconds").GetDouble();
            Assert.True(run.RunTo(seconds - (0.5 * run.Choice.StepSeconds), ref none, stopWhenLost: true));
            Assert.Equal(run.TimeSeconds, seconds, 1e-12);
            AxisState s = run.State;
            (double a, double b) = run.Currents;
            double[] expected = [s.Rotor, s.RotorSpeed, s.Axis, s.AxisSpeed, a, b];
            for (int i = 0; i < expected.Length; i++)
            {
                (string quantity, double size) = s_quantities[i];
                double found = state.GetProperty(quantity).GetDouble();
                Assert.True(
                    Math.Abs(found - expected[i]) <= Relative * size,
                    string.Create(CultureInfo.InvariantCulture, $"{program}, {name}, {seconds} s: {quantity} is {found}, not {expected[i]}"));
            }
        }
    }

    private static string Run(string file, string arguments, string folder)
    {
        using Process process = Process.Start(new ProcessStartInfo(file, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{file} {arguments}: {errors.Result}");
        return output;
    }
}
