using AxisSim.Core.Bounds;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Motors;

/// <summary>What reading a measured curve gave.</summary>
/// <param name="Points">The points; empty when there are problems.</param>
/// <param name="Problems">All problems, by line.</param>
public sealed record MeasuredTableResult(IReadOnlyList<MeasuredPoint> Points, IReadOnlyList<Problem> Problems);

/// <summary>Reads a measured pull-out curve (CSV, docs/catalogue.md).</summary>
public static class MeasuredTable
{
    private static readonly IReadOnlyList<ScenarioKey> s_columns =
    [
        Needed("speed", Dimension.AxisOrMotorRate, "600 rpm", Bound.From(0, 100000 * Math.PI / 30.0, "rad/s"), "speed of the motor"),
        Needed("torque", Dimension.Torque, "0.2 N*m", Bound.From(0, MotorBounds.HoldingTorque.Greatest, "N m"), "pull-out torque at that speed"),
        Free("supply_voltage", Dimension.Voltage, "that of the scenario", "24 V", DriveBounds.SupplyVoltage, "supply voltage during the measurement"),
        Free("phase_current", Dimension.Current, "the rated current", "1.5 A", DriveBounds.MovingCurrent, "phase current during the measurement, peak of the sine"),
        Choice("mode", "microstep", "microstep, or full-step", "microstep", "full-step"),
    ];

    /// <summary>Reads a file.</summary>
    /// <param name="path">File.</param>
    /// <param name="motor">The motor, for its rated current and steps.</param>
    /// <param name="supplyVolts">Supply voltage where the table does not tell, V.</param>
    /// <param name="stop">Ends the waiting for a file that does not come, with an <see cref="OperationCanceledException"/>.</param>
    public static MeasuredTableResult ReadFile(string path, StepperMotor motor, double supplyVolts, CancellationToken stop = default)
    {
        string? text = ScenarioFile.Load(path, "table of a measured curve", "curve.csv", "the name of a file with the columns speed_rpm and torque_n_m", stop, out Problem? problem);
        return text is null ? new MeasuredTableResult([], [problem!]) : ReadText(text, path, motor, supplyVolts);
    }

    /// <summary>Reads the text of a file; the file name is only for messages.</summary>
    public static MeasuredTableResult ReadText(string text, string fileName, StepperMotor motor, double supplyVolts)
    {
        ArgumentNullException.ThrowIfNull(motor);
        var problems = new List<Problem>();
        if (CsvSheet.Read(text, fileName, "speed_rpm,torque_n_m", problems) is not { } sheet)
        {
            return new MeasuredTableResult([], problems);
        }

        var columns = new SheetColumns(sheet, s_columns, problems);
        double perSpeed = columns.Place("speed") == RatePlace.MotorSteps ? motor.FullStepRadians : 1.0;
        var points = new List<MeasuredPoint>();
        foreach (CsvRow row in sheet.Rows)
        {
            double? speed = columns.Number(row, "speed"), torque = columns.Number(row, "torque"), volts = columns.Number(row, "supply_voltage"), current = columns.Number(row, "phase_current");
            bool full = columns.Text(row, "mode") == "full-step";
            if (speed is { } rate && torque is { } force)
            {
                points.Add(new MeasuredPoint(rate * perSpeed, force, volts ?? supplyVolts, current ?? motor.RatedCurrentAmperes, full));
            }
        }

        if (problems.Count == 0 && points.All(point => point.TorqueNewtonMetres == 0.0))
        {
            problems.Add(new Problem(fileName, 0, 0, "torque", "no torque above zero", "one point at least at which the motor gives torque", ""));
        }

        return new MeasuredTableResult(problems.Count == 0 ? points : [], [.. problems.Distinct().OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)]);
    }
}
