using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Sky;
using CsvHelper;

namespace AxisSim.Files.Tables;

/// <summary>Writes a comparison as CSV in SI units, the unit in each column's name; a figure that does not exist is empty. Names are guarded (<see cref="FormulaGuard"/>).</summary>
public static class ComparisonCsv
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };

    private static readonly (string Name, Func<CandidateAxis, double> Value)[] s_numbers =
    [
        ("safe_rate_rad_per_s", axis => axis.RateRadiansPerSecond),
        ("first_failing_rate_rad_per_s", axis => axis.Search?.FirstFailingRadiansPerSecond ?? double.NaN),
        ("closed_form_bound_rad_per_s", axis => axis.BoundRadiansPerSecond),
        ("own_slew_s", axis => axis.OwnSlewSeconds),
        ("settle_s", axis => axis.SettleSeconds),
        ("winding_continuous_degC", axis => axis.ContinuousCelsius),
        ("winding_limit_degC", axis => axis.LimitCelsius),
        ("mean_power_W", axis => axis.MeanWatts),
        ("full_step_rad", axis => axis.Facts.FullStepRadians),
        ("microstep_rad", axis => axis.Facts.MicrostepRadians),
        ("motor_speed_rad_per_s", axis => axis.Facts.MotorSpeedRadiansPerSecond),
        ("total_reduction", axis => axis.Facts.TotalReduction),
        ("inertia_ratio", axis => axis.InertiaRatio),
        ("worm_locks", axis => axis.Facts.SelfLocking ? 1.0 : 0.0),
    ];

    /// <summary>Writes one row per candidate in the order of the ranking, the columns of each axis with its name in front.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="axes">The axes.</param>
    /// <param name="results">The results, the best first.</param>
    public static void Write(Stream stream, IReadOnlyList<MountAxis> axes, IReadOnlyList<CandidateResult> results)
    {
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(results);
        using var csv = CsvWriter.Create(stream, Options, leaveOpen: true);
        csv.WriteHeader(
        [
            "rank", "motor", "frame", "fate", "asked_total_reduction", "supply_V", "slew_s", "settle_s", "on_target_s", "mean_power_W",
            .. axes.SelectMany(axis => s_numbers.Select(column => $"{Name(axis)}_{column.Name}").Append($"{Name(axis)}_limit")),
        ]);
        for (int i = 0; i < results.Count; i++)
        {
            CandidateResult result = results[i];
            csv.WriteField(result.Fate == CandidateFate.Ranked ? (i + 1).ToString(CultureInfo.InvariantCulture) : "");
            csv.WriteField(FormulaGuard.Put(result.Candidate.Motor.Name));
            csv.WriteField(FormulaGuard.Put(result.Candidate.Motor.Frame));
            csv.WriteField(Snake(result.Fate.ToString()));
            double[] numbers = [result.Candidate.TotalReduction ?? double.NaN, result.Candidate.SupplyVolts ?? double.NaN, result.SlewSeconds, result.SettleSeconds, result.OnTargetSeconds, result.MeanWatts];
            Array.ForEach(numbers, number => Write(csv, number));
            foreach (CandidateAxis axis in axes.Select(axis => result.Axes.First(one => one.Axis == axis)))
            {
                Array.ForEach(s_numbers, column => Write(csv, column.Value(axis)));
                csv.WriteField(Snake(axis.Limit.ToString()));
            }

            csv.EndRecord();
        }
    }

    private static void Write(CsvWriter csv, double value)
    {
        if (double.IsFinite(value))
        {
            csv.WriteField(value, default, CultureInfo.InvariantCulture);
        }
        else
        {
            csv.WriteField("");
        }
    }

    private static string Name(MountAxis axis) => axis == MountAxis.Polar ? "polar" : "declination";

    private static string Snake(string word) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(word);
}
