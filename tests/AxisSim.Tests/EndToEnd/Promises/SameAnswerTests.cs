using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.EndToEnd.Promises;

/// <summary>Commands that print the same thing of the same case print the same.</summary>
[Trait("speed", "slow")]
public sealed partial class SameAnswerTests
{
    // Rates lie on a grid; between documents they are the same number but for its last bits.
    private const double Bits = 1e-9;

    public static TheoryData<string> Cases => CommandRuns.Cases;

    /// <summary>Verdict, margin, load factor and settle time of the file's own move: by simulate and by reduction, which runs it at the file's own reduction.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_own_move(string name)
    {
        CommandRun reduction = CommandRuns.Of("reduction", name, "--points", "2");
        foreach ((JsonElement simulated, JsonElement own) in Axes(CommandRuns.Of("simulate", name)).Zip(Axes(reduction).Select(axis => axis.GetProperty("result").GetProperty("own"))))
        {
            JsonElement outcome = simulated.GetProperty("outcome");
            Assert.Equal(outcome.GetProperty("verdict").GetString(), own.GetProperty("own_move").GetString());
            Assert.Equal(Number(outcome.GetProperty("margin"), "value"), Number(own, "own_margin"), Bits);
            Assert.Equal(Number(outcome.GetProperty("load_factor"), "value"), Number(own.GetProperty("own_load_factor"), "value"), Bits);
            if (outcome.GetProperty("verdict").GetString() == "arrives")
            {
                Assert.Equal(Number(outcome.GetProperty("settling"), "against_rest_seconds"), Number(own, "own_settle_seconds"), Bits);
                Assert.Equal(Number(outcome.GetProperty("settling"), "rest_radians"), Number(outcome.GetProperty("offset"), "total_radians"), Bits * 1e-3);
            }
        }
    }

    /// <summary>The greatest rate that arrives, the first that fails, failing bands and what ends the search: by simulate, envelope, and reduction without a margin.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_greatest_rate(string name)
    {
        JsonElement[] simulated = [.. Axes(CommandRuns.Of("simulate", name)).Select(axis => axis.GetProperty("rates"))];
        JsonElement[] envelope = [.. Axes(CommandRuns.Of("envelope", name, "--points", "2")).Select(axis => axis.GetProperty("own"))];
        JsonElement[] reduction = [.. Axes(CommandRuns.Of("reduction", name, "--margin", "0%", "--ratios", Own(name))).Select(axis => axis.GetProperty("result").GetProperty("own"))];
        for (int i = 0; i < simulated.Length; i++)
        {
            foreach (string figure in new[] { "rate_radians_per_second", "first_failing_radians_per_second" })
            {
                Assert.Equal(Number(simulated[i], figure), Number(envelope[i], figure), Bits);
            }

            Assert.Equal(simulated[i].GetProperty("cap").ToString(), envelope[i].GetProperty("cap").ToString());
            Assert.Equal(simulated[i].GetProperty("failing_bands").GetRawText(), envelope[i].GetProperty("failing_bands").GetRawText());
            Assert.Equal(Number(simulated[i], "rate_radians_per_second"), Number(reduction[i], "safe_rate_radians_per_second"), Bits);
            Assert.Equal(Number(simulated[i], "first_failing_radians_per_second"), Number(reduction[i], "first_failing_rate_radians_per_second"), Bits);
        }
    }

    /// <summary>What limits: the cause of the first rate that fails, as simulate finds it and by reduction.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_cause(string name)
    {
        MountAxis[] axes = [.. AxisNames.Of(Read(name))];
        JsonElement[] reduction = [.. Axes(CommandRuns.Of("reduction", name, "--margin", "0%", "--ratios", Own(name))).Select(axis => axis.GetProperty("result").GetProperty("own"))];
        for (int i = 0; i < axes.Length; i++)
        {
            string bound = reduction[i].GetProperty("bound").GetString()!;
            double failing = Number(reduction[i], "first_failing_rate_radians_per_second");
            if (double.IsNaN(failing))
            {
                Assert.Equal(Axes(CommandRuns.Of("simulate", name))[i].GetProperty("rates").GetProperty("cap").GetString(), bound);
                continue;
            }

            // As simulate asks, to the last bit of the rate: what makes a move fail next to a resonance may hang on it.
            MountSetup setup = Read(name), there = setup.WithRampTime(axes[i], setup.Axis(axes[i]).Motion.RampInUseSeconds).WithSlewRate(axes[i], failing);
            Assert.Equal(bound.Replace("_", "", StringComparison.Ordinal), MoveAnswers.Of(there, axes[i], arrives: false, new QuestionOptions()).Diagnosis!.Why.Limit.ToString(), ignoreCase: true);
        }
    }

    /// <summary>With the same margin, compare finds for the file's own motor what reduction finds for its own reduction: to the coarser of their grids.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_margin(string name)
    {
        MountSetup setup = Read(name);
        MountAxis[] axes = [.. AxisNames.Of(setup)];
        var shares = axes.Select(axis => setup.Axis(axis).Drive.SlewCurrentAmperes / setup.Axis(axis).Motor.RatedCurrentAmperes).Distinct().ToArray();
        CommandRun compare = CommandRuns.Of("compare", name, "--motors", OwnMotor(setup.Axis(axes[0])), "--current-share", $"{(100.0 * shares[0]).ToString("G12", CultureInfo.InvariantCulture)}%", "--all");
        JsonElement reduced = CommandRuns.Of("reduction", name, "--points", "2").Document!.Value;
        JsonElement[] own = [.. reduced.GetProperty("axes").EnumerateArray().Select(axis => axis.GetProperty("result").GetProperty("own"))];
        double grid = Number(compare.Document!.Value, "resolution_radians_per_second") * (1.0 + Bits);
        JsonElement[] searched = [.. compare.Document!.Value.GetProperty("candidates")[0].GetProperty("axes").EnumerateArray()];
        for (int i = 0; i < axes.Length; i++)
        {
            double rate = Number(searched[i].GetProperty("search"), "rate_radians_per_second"), other = Number(own[i], "safe_rate_radians_per_second");
            Assert.Equal(double.IsNaN(other) || other < 0.1 * setup.Axis(axes[i]).Motion.SlewRateRadiansPerSecond, double.IsNaN(rate));
            if (!double.IsNaN(rate))
            {
                Assert.InRange(rate, other - grid, other + grid);
                Assert.Equal(own[i].GetProperty("bound").GetString(), searched[i].GetProperty("limit").GetString());
            }
        }
    }

    /// <summary>The least margin: by simulate and by curve, as printed.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_least_margin_of_the_curve(string name)
    {
        string curve = Regex.Replace(CommandRuns.Of("curve", name).Text, @"\s+", " ");
        foreach (JsonElement axis in Axes(CommandRuns.Of("simulate", name)))
        {
            JsonElement margin = axis.GetProperty("outcome").GetProperty("margin");
            string words = axis.GetProperty("outcome").GetProperty("axis").GetString() == "polar" ? "Polar axis" : "Declination axis";
            Match told = Regex.Match(curve, words + @": ([A-Z ]+: )?at its hardest moment the move needs (\S+) mN m");
            Assert.True(told.Success, curve[..Math.Min(600, curve.Length)]);
            Assert.Equal(Say.Number(1000.0 * Number(margin, "needed_newton_metres")), told.Groups[2].Value);
        }
    }

    /// <summary>The report has the figures of the screen, and its sheet both directions of the edge.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_report_and_its_sheet(string name)
    {
        string html = Regex.Replace(System.Net.WebUtility.HtmlDecode(Regex.Replace(CommandRuns.Of("report", name).Html, "<[^>]+>", " ")), @"\s+", " ");
        foreach (JsonElement axis in Axes(CommandRuns.Of("simulate", name)))
        {
            Assert.Contains(axis.GetProperty("verdict").GetString()!, html, StringComparison.Ordinal);
            JsonElement factor = axis.GetProperty("outcome").GetProperty("load_factor");
            Assert.Contains(factor.ValueKind == JsonValueKind.Null ? "none: it fails" : Say.Number(Number(factor, "value")), Row(html, "Load factor"), StringComparison.Ordinal);
            double rate = Number(axis.GetProperty("rates"), "rate_radians_per_second");
            if (axis.GetProperty("rates").GetProperty("failing_bands").GetArrayLength() == 0)
            {
                Assert.Contains(double.IsNaN(rate) ? "none does" : Say.Number(Units.Degrees(rate), 4), Row(html, "rrives up to a slew rate of"), StringComparison.Ordinal);
            }
        }
    }

    private static string Row(string html, string name)
    {
        int at = html.IndexOf("Prediction", StringComparison.Ordinal);
        int from = html.IndexOf(name, Math.Max(0, at), StringComparison.Ordinal);
        Assert.True(from >= 0, name + " is not on the sheet");
        return html.Substring(from, Math.Min(90, html.Length - from));
    }

    private static JsonElement[] Axes(CommandRun run) => [.. run.Document!.Value.GetProperty("axes").EnumerateArray()];

    private static double Number(JsonElement from, string name) =>
        from.ValueKind == JsonValueKind.Null || !from.TryGetProperty(name, out JsonElement value) || value.ValueKind == JsonValueKind.Null ? double.NaN : value.GetDouble();

    private static MountSetup Read(string name) => ScenarioReader.ReadFile(CommandRuns.PathOf(name), []).Scenario!.Setup;

    private static string Own(string name) => Read(name).Polar!.Train.TotalRatio.ToString("G12", CultureInfo.InvariantCulture);

    private static string OwnMotor(AxisModel model)
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory("axissim-motor-").FullName, "motor.csv");
        string N(double value) => value.ToString("G15", CultureInfo.InvariantCulture);
        Core.Motors.StepperMotor m = model.Motor;
        File.WriteAllLines(path,
        [
            "name,frame,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_mh,rotor_inertia_g_cm2,detent_torque_mn_m,viscous_n_m_s_per_rad,friction_mn_m,insulation_class",
            $"own,,{N(m.StepsPerRevolution)},{N(m.HoldingTorqueNewtonMetres)},{N(m.RatedCurrentAmperes)},{N(m.ResistanceOhms)},{N(m.InductanceHenries * 1e3)},{N(m.RotorInertiaKilogramSquareMetres * 1e7)},{N(m.DetentTorqueNewtonMetres * 1e3)},{N(m.ViscousNewtonMetreSecondsPerRadian)},{N(m.CoulombTorqueNewtonMetres * 1e3)},{m.Insulation}",
        ]);
        return path;
    }
}
