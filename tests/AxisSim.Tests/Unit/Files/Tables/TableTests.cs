using System.Globalization;
using System.Text;
using System.Text.Json;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Tests.Assemblies;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.Unit.Files.Tables;

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
        Assert.Equal(["time_from_s", "time_to_s", "planned_angle_least_rad", "planned_angle_greatest_rad"], names[..4]);
        Assert.All(names.Except(["saturation_share", "full_stepping_share"]), name => Assert.Matches("_(s|rad|rad_per_s|N_m|A|V|degC)$", name));
        Assert.Equal(names.Length, names.Distinct().Count());
        double[] Column(string name) => [.. lines.Skip(1).Select(line => double.Parse(line.Split(',')[Array.IndexOf(names, name)], CultureInfo.InvariantCulture))];
        Assert.Equal(trace.FromSeconds, Column("time_from_s"));
        Assert.Equal(trace.ToSeconds, Column("time_to_s"));
        Assert.Equal(trace[TraceQuantity.AxisErrorRadians].Least, Column("axis_error_least_rad"));
        Assert.Equal(trace[TraceQuantity.LoadAngleRadians].Greatest, Column("load_angle_greatest_electrical_rad"));
        Assert.Equal(trace[TraceQuantity.MotorTorqueNewtonMetres].Mean, Column("motor_torque_mean_N_m"));
        Assert.Equal(trace[TraceQuantity.Saturated].Mean, Column("saturation_share"));
        Assert.Equal("", lines[1].Split(',')[Array.IndexOf(names, "available_torque_least_N_m")]);
    }

    [Fact]
    public void Every_quantity_has_its_least_and_greatest_or_its_share_in_a_table()
    {
        string[] names = Text(stream => TraceCsv.Write(stream, Sample())).Split('\n')[0].Split(',');
        Assert.Equal(Enum.GetValues<TraceQuantity>().Order(), TraceColumn.All.Select(column => column.Quantity).Order());
        Assert.All(TraceColumn.All, column => Assert.True(
            names.Contains(column.Name + "_share") || (names.Contains(column.Part("least")) && names.Contains(column.Part("greatest"))), column.Name));
    }

    [Fact]
    public void Steps_have_a_row_each_and_a_close_up_has_its_own_quantity()
    {
        double[] values = [.. Enum.GetValues<TraceQuantity>().Select(quantity => 0.5 * (int)quantity)];
        string[] lines = Text(stream =>
        {
            using var table = new StepCsv(stream);
            table.Take(new StepSample(50e-6, values));
        }).TrimEnd('\n').Split('\n');
        Assert.Equal(2, lines.Length);
        string[] names = lines[0].Split(',');
        Assert.Equal(1 + values.Length, names.Length);
        Assert.Equal("time_s", names[0]);
        Assert.Equal("5E-05", lines[1].Split(',')[0]);
        Assert.Equal((0.5 * (int)TraceQuantity.LoadAngleRadians).ToString(CultureInfo.InvariantCulture), lines[1].Split(',')[Array.IndexOf(names, "load_angle_electrical_rad")]);

        var near = new CloseUp(TraceQuantity.LoadAngleRadians);
        near.Add(0.1, 0.2, -1.5, double.NaN);
        Assert.Equal("time_from_s,time_to_s,load_angle_least_electrical_rad,load_angle_greatest_electrical_rad\n0.1,0.2,-1.5,\n", Text(stream => TraceCsv.Write(stream, near)));
    }

    [Fact]
    public void Columns_of_different_length_are_a_mistake_of_the_program() =>
        Assert.Throws<ArgumentException>(() => NumberColumns.Write(Stream.Null, [("a_s", [1.0, 2.0]), ("b_s", [1.0])]));

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
                "band": null,
                "shakes_at_rate": false,
                "decides": true
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
    public void What_killed_runs_left_in_a_folder_goes_with_the_next_file_whatever_it_was_to_become()
    {
        string digits = new('a', 32), other = new('b', 32);
        string left = Path.Combine(folder, $".axissim-{digits}.tmp"), written = Path.Combine(folder, $".axissim-{other}.tmp");
        string[] foreign = [Path.Combine(folder, $".sky-{digits}.tmp"), Path.Combine(folder, ".axissim-mine.tmp"), Path.Combine(folder, $"axissim-{digits}.tmp")];
        foreach (string file in foreign.Append(left))
        {
            File.WriteAllText(file, "half");
        }

        string path = Path.Combine(folder, "trace.csv");
        using (new FileStream(written, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete))
        {
            // What another run is writing at this moment is locked by it, and stays.
            Assert.Null(AtomicFile.WriteText(path, "new"));
            Assert.Equal([.. foreign.Append(path).Append(written).Order(StringComparer.Ordinal)], Directory.GetFiles(folder).Order(StringComparer.Ordinal));
        }

        Assert.Null(AtomicFile.WriteText(path, "newer"));
        Assert.Equal([.. foreign.Append(path).Order(StringComparer.Ordinal)], Directory.GetFiles(folder).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_file_that_does_not_come_takes_back_the_folders_that_were_made_for_it()
    {
        string kept = Path.Combine(folder, "kept");
        Directory.CreateDirectory(kept);
        Assert.NotNull(AtomicFile.Write(Path.Combine(kept, "a", "b", "trace.csv"), _ => throw new IOException("No space left on device", 28)));
        Assert.NotNull(AtomicFile.WriteText(Path.Combine(kept, "a", new string('n', 300), "trace.csv"), "x"));
        Assert.NotNull(AtomicFile.WriteText(Path.Combine(kept, "a", new string('n', 300)), "x"));
        Assert.NotNull(AtomicFile.WriteText(Path.Combine(kept, "a", "b") + Path.DirectorySeparatorChar, "x"));
        Assert.Null(AtomicFile.Try(Path.Combine(kept, "a", "b", "trace.csv")));
        Assert.Empty(Directory.GetFileSystemEntries(kept));
        Assert.Equal([kept], Directory.GetFileSystemEntries(folder));
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
        int count = Enum.GetValues<TraceQuantity>().Length;
        for (int i = 0; i < 3; i++)
        {
            double[] least = [.. Enumerable.Range(0, count).Select(quantity => (i + quantity) / 3.0 * 1e-6)], mean = [.. least.Select(value => value + (1.0 / 7.0))], greatest = [.. least.Select(value => value + (1.0 / 3.0))];
            if (i == 0)
            {
                least[(int)TraceQuantity.AvailableTorqueNewtonMetres] = double.NaN;
            }

            trace.Add(i / 7.0, (i + 1) / 7.0, least, mean, greatest);
        }

        return trace;
    }
}
