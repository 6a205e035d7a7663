using System.Globalization;
using System.Text;
using System.Text.Json;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.Unit.Files;

/// <summary>CSV, JSON and the writing of files.</summary>
public sealed class TableTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-tables-").FullName;

    public static TheoryData<string> Cultures => Golden.Cultures.Names;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_trace_reads_back_to_the_last_bit(string culture)
    {
        Trace trace = Sample();
        string text = Golden.Cultures.Under(culture, () => Text(stream => TraceCsv.Write(stream, trace)));
        string[] lines = text.TrimEnd('\n').Split('\n');
        Assert.Equal(1 + trace.Count, lines.Length);
        string[] names = lines[0].Split(',');
        Assert.Equal(21, names.Length);
        Assert.Equal(["time_s", "planned_angle_rad"], names[..2]);
        Assert.All(names[..^1].Except(["saturation_share"]), name => Assert.Matches("_(s|rad|rad_per_s|N_m|A|V|degC)$", name));
        double[] error = [.. lines.Skip(1).Select(line => double.Parse(line.Split(',')[Array.IndexOf(names, "axis_error_rad")], CultureInfo.InvariantCulture))];
        Assert.Equal(trace.AxisErrorRadians, error);
        Assert.Equal("", lines[1].Split(',')[Array.IndexOf(names, "available_torque_N_m")]);
    }

    [Fact]
    public void Columns_of_different_length_are_a_mistake_of_the_program()
    {
        Trace trace = Sample();
        trace.BusVolts.Add(1);
        Assert.Throws<ArgumentException>(() => TraceCsv.Write(Stream.Null, trace));
    }

    [Fact]
    public void Curves_have_columns_for_each_mode_and_supply_and_mark_bands()
    {
        TorqueSpeedCurves curves = new()
        {
            SpeedsRadiansPerSecond = [1, 2, 3],
            Curves = [new(true, SupplyLevel.Low, 21.6, [0.5, 0.4, 0.3], [0.5, double.NaN, 0.29], [0.5, double.NaN, 0.29]), new(false, SupplyLevel.Nominal, 24, [0.4, 0.4, 0.35], [0.4, 0, 0.35], [0.4, 0.4, 0.352])],
            Bands = [new(false, 1, 3, 0, 0.4)],
            Path = [new(0, 0, 0.01), new(0.5, 1, -0.02)],
            ChangeoverRadiansPerSecond = double.PositiveInfinity,
        };
        Assert.Equal(
            "motor_speed_rad_per_s,pull_out_full_step_low_21.6V_closed_form_N_m,pull_out_full_step_low_21.6V_least_N_m,pull_out_full_step_low_21.6V_greatest_N_m,"
            + "pull_out_microstep_nominal_24V_closed_form_N_m,pull_out_microstep_nominal_24V_least_N_m,pull_out_microstep_nominal_24V_greatest_N_m,band_microstep\n"
            + "1,0.5,0.5,0.5,0.4,0.4,0.4,0\n2,0.4,,,0.4,0,0.4,1\n3,0.3,0.29,0.29,0.35,0.35,0.352,0\n",
            Text(stream => CurvesCsv.WriteCurves(stream, curves)));
        Assert.Equal("time_s,motor_speed_rad_per_s,needed_torque_N_m\n0,0,0.01\n0.5,1,-0.02\n", Text(stream => CurvesCsv.WritePath(stream, curves)));
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void Json_has_units_in_its_names_and_null_for_what_is_not_finite(string culture)
    {
        string text = Golden.Cultures.Under(culture, () => OutcomeJson.ToText(
            "simulation", ("margin", new TorqueMargin(0.25, 1.5, 0.1, double.NaN, double.PositiveInfinity)), ("verdict", Verdict.ClutchSlips), ("list", new List<double> { 1.5, double.NegativeInfinity }), ("nothing", null)));
        Assert.Equal(
            """
            {
              "schema": 1,
              "kind": "simulation",
              "margin": {
                "value": 0.25,
                "time_seconds": 1.5,
                "needed_newton_metres": 0.1,
                "available_newton_metres": null,
                "motor_speed_radians_per_second": null,
                "band": null
              },
              "verdict": "clutch_slips",
              "list": [
                1.5,
                null
              ],
              "nothing": null
            }

            """.ReplaceLineEndings("\n"),
            text);
        using var parsed = JsonDocument.Parse(text);
        Assert.Equal(1, parsed.RootElement.GetProperty("schema").GetInt32());
    }

    [Fact]
    public void A_file_is_written_whole_and_replaces_the_old_one()
    {
        string path = Path.Combine(folder, "new", "trace.csv");
        Assert.Null(AtomicFile.WriteText(path, "old"));
        Assert.Null(AtomicFile.WriteText(path, "new µ"));
        Assert.Equal("new µ"u8.ToArray(), File.ReadAllBytes(path));
        Assert.Equal([path], Directory.GetFiles(Path.GetDirectoryName(path)!));
    }

    [Fact]
    public void A_write_that_fails_half_way_leaves_the_old_file_and_nothing_else()
    {
        string path = Path.Combine(folder, "trace.csv");
        Assert.Null(AtomicFile.WriteText(path, "old"));
        Problem? problem = AtomicFile.Write(path, stream =>
        {
            stream.Write("half"u8);
            throw new IOException("No space left on device", 28);
        });
        Assert.Equal("no space left on the disk", problem?.Found);
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(folder));
    }

    [Fact]
    public void What_a_killed_run_left_of_a_file_goes_when_it_is_written_again()
    {
        string digits = new('a', 32), other = new('b', 32);
        string left = Path.Combine(folder, $".trace.csv.{digits}.tmp"), young = Path.Combine(folder, $".trace.csv.{other}.tmp");
        string[] foreign = [young, Path.Combine(folder, $".sky.csv.{digits}.tmp"), Path.Combine(folder, ".trace.csv.mine.tmp"), Path.Combine(folder, $"trace.csv.{digits}.tmp")];
        foreach (string file in foreign.Append(left))
        {
            File.WriteAllText(file, "half");
            File.SetLastWriteTimeUtc(file, DateTime.UtcNow - (file == young ? TimeSpan.Zero : TimeSpan.FromMinutes(2)));
        }

        string path = Path.Combine(folder, "trace.csv");
        Assert.Null(AtomicFile.WriteText(path, "new"));
        Assert.Equal(foreign.Append(path).Order(StringComparer.Ordinal), Directory.GetFiles(folder).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_mistake_of_the_writer_is_not_hidden_and_leaves_nothing_behind()
    {
        string path = Path.Combine(folder, "trace.csv");
        Assert.Throws<ArgumentException>(() => AtomicFile.Write(path, _ => throw new ArgumentException("wrong")));
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void Places_where_no_file_can_be_are_told()
    {
        Assert.Contains("a directory", AtomicFile.WriteText(folder, "x")!.ToString(), StringComparison.Ordinal);
        string file = Path.Combine(folder, "file");
        File.WriteAllText(file, "");
        Assert.NotNull(AtomicFile.WriteText(Path.Combine(file, "below"), "x"));
        Assert.NotNull(AtomicFile.WriteText("a\0b", "x"));
        Assert.NotNull(AtomicFile.WriteText("", "x"));
        Assert.NotNull(AtomicFile.WriteText(Path.Combine(folder, new string('n', 5000)), "x"));
    }

    private static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static Trace Sample()
    {
        var trace = new Trace();
        for (int i = 0; i < 3; i++)
        {
            foreach (List<double> column in typeof(Trace).GetProperties().Where(property => property.PropertyType == typeof(List<double>)).Select(property => (List<double>)property.GetValue(trace)!))
            {
                column.Add((i + 1) / 3.0 * 1e-6);
            }
        }

        trace.AvailableTorqueNewtonMetres[0] = double.NaN;
        return trace;
    }
}
