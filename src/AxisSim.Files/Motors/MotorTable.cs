using AxisSim.Core.Comparisons;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount.Checks;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Motors;

/// <summary>What reading a table of motors gave.</summary>
/// <param name="Motors">The motors as wired, in the order of the file; empty when there are problems.</param>
/// <param name="Problems">All problems, by line.</param>
public sealed record MotorTableResult(IReadOnlyList<MotorChoice> Motors, IReadOnlyList<Problem> Problems);

/// <summary>Reads motors from a table of datasheet figures (CSV, docs/catalogue.md).</summary>
public static class MotorTable
{
    /// <summary>Detent torque over holding torque where the datasheet does not tell: 3 to 6 % by size (common practice, no source).</summary>
    public const double UsualDetentShare = 0.04;

    private const int LongestName = 60;
    private const double SecondsPerDefault = 1500.0;

    /// <summary>Reads a file.</summary>
    /// <param name="path">File.</param>
    /// <param name="stop">Ends the waiting for a file that does not come, with an <see cref="OperationCanceledException"/>.</param>
    public static MotorTableResult ReadFile(string path, CancellationToken stop = default)
    {
        string? text = ScenarioFile.Load(path, "table of motors", "motors.csv", "a name of a file such as catalogues/motors.csv", stop, out Problem? problem);
        return text is null ? new MotorTableResult([], [problem!]) : ReadText(text, path);
    }

    /// <summary>Reads the text of a file; the file name is only for messages.</summary>
    public static MotorTableResult ReadText(string text, string fileName)
    {
        var problems = new List<Problem>();
        if (CsvSheet.Read(text, fileName, MotorColumns.Example, problems) is not { } sheet)
        {
            return new MotorTableResult([], problems);
        }

        var columns = new SheetColumns(sheet, MotorColumns.All, problems);
        bool whole = problems.Count == 0;
        MotorChoice?[] motors = [.. sheet.Rows.Select(row => Motor(columns, row))];
        for (int i = 0; i < motors.Length && problems.Count == 0; i++)
        {
            // Figures of a half coil change with the wiring.
            problems.AddRange((motors[i] is { } motor ? SetupChecks.Problems(motor.Motor) : []).Select(problem =>
                new Problem(fileName, sheet.Rows[i].Line, 0, "wiring", $"figures that make {SetupNet.Words(problem.What)} {problem.Found} as the motor is wired", problem.Allowed, "")));
        }

        foreach (IGrouping<string, (CsvRow Row, string Name)> same in sheet.Rows.Select(row => (Row: row, Name: columns.Text(row, "name") ?? "")).Where(pair => pair.Name.Length > 0).GroupBy(pair => pair.Name, StringComparer.OrdinalIgnoreCase))
        {
            foreach ((CsvRow row, string name) in same.Skip(1))
            {
                problems.Add(new Problem(fileName, row.Line, 0, "name", FormattableString.Invariant($"\"{name}\" again, as in line {same.First().Row.Line}"), "a different name for each motor", ""));
            }

            if (same.Key.Length > LongestName)
            {
                problems.Add(new Problem(fileName, same.First().Row.Line, 0, "name", FormattableString.Invariant($"a name of {same.Key.Length} characters"), FormattableString.Invariant($"up to {LongestName} characters"), ""));
            }
        }

        Problem[] sorted = [.. problems.Distinct().OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)];
        return new MotorTableResult(whole && sorted.Length == 0 ? [.. motors.OfType<MotorChoice>()] : [], sorted);
    }

    private static MotorChoice? Motor(SheetColumns columns, CsvRow row)
    {
        double? Number(string name) => columns.Number(row, name);
        (string? name, string? frame, string? insulation, string? wiring) = (columns.Text(row, "name"), columns.Text(row, "frame"), columns.Text(row, "insulation_class"), columns.Text(row, "wiring"));
        double? steps = Number("steps_per_revolution"), torque = Number("holding_torque"), current = Number("rated_current");
        double? resistance = Number("resistance"), inductance = Number("inductance"), inertia = Number("rotor_inertia");
        double? detent = Number("detent_torque"), viscous = Number("viscous"), friction = Number("friction"), heat = Number("thermal_resistance"), time = Number("thermal_time");
        if (name is null || new[] { steps, torque, current, resistance, inductance, inertia }.Any(value => value is null))
        {
            return null;
        }

        var figures = new StepperMotor
        {
            StepsPerRevolution = (int)steps!.Value,
            HoldingTorqueNewtonMetres = torque!.Value,
            RatedCurrentAmperes = current!.Value,
            ResistanceOhms = resistance!.Value,
            InductanceHenries = inductance!.Value,
            RotorInertiaKilogramSquareMetres = inertia!.Value,
            DetentTorqueNewtonMetres = detent ?? (UsualDetentShare * torque.Value),
            ViscousNewtonMetreSecondsPerRadian = viscous ?? 0.0,
            CoulombTorqueNewtonMetres = friction ?? 0.0,
            GivenThermalResistanceKelvinPerWatt = heat,
            ThermalTimeConstantSeconds = time ?? SecondsPerDefault,
            Insulation = insulation is null ? InsulationClass.B : Enum.Parse<InsulationClass>(insulation),
        };
        return new MotorChoice(name, frame ?? "", wiring is null or "as-wired" ? figures : MotorDatasheet.Wire(figures, wiring switch
        {
            "bipolar-series" => MotorWiring.BipolarSeries,
            "bipolar-parallel" => MotorWiring.BipolarParallel,
            _ => MotorWiring.HalfCoil,
        }));
    }
}
