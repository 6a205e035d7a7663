using AxisSim.Core.Comparisons;
using AxisSim.Files.Keys;
using AxisSim.Files.Motors;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Reads <c>--measured "NAME=curve.csv"</c> and fits the motors named.</summary>
internal static class MeasuredInput
{
    private const string Option = "--measured";

    /// <summary>The fits; problems are added.</summary>
    public static IReadOnlyList<MeasuredFit> Read(string[] texts, IReadOnlyList<MotorChoice> motors, double supplyVolts, List<Problem> problems, CancellationToken stop)
    {
        var fits = new List<MeasuredFit>();
        foreach (string text in texts)
        {
            int equals = text.LastIndexOf('=');
            string name = equals < 0 ? "" : text[..equals].Trim(), path = equals < 0 ? "" : text[(equals + 1)..].Trim();
            if (name.Length == 0 || path.Length == 0)
            {
                problems.Add(new Problem(Option, 0, 0, "", $"\"{text}\" ({(equals < 0 ? "there is no = in it" : name.Length == 0 ? "there is no name before the =" : "there is no file after the =")})", "NAME=FILE, the name as in the table of motors", $"{Option} \"{(motors.Count > 0 ? motors[0].Name : "17 long")}=curve.csv\""));
            }
            else if (motors.FirstOrDefault(motor => string.Equals(motor.Name, name, StringComparison.OrdinalIgnoreCase)) is not { } motor)
            {
                // After a problem with the table itself there is nothing to compare the name with.
                if (motors.Count > 0)
                {
                    string? near = NearestName.Of(name, motors.Select(one => one.Name));
                    problems.Add(new Problem(Option, 0, 0, name, "a motor that is not in the table", Say.List([.. motors.Select(one => one.Name)]), near is null ? "" : $"{Option} \"{near}={path}\""));
                }
            }
            else if (fits.Any(fit => fit.Motor == motor.Name))
            {
                problems.Add(new Problem(Option, 0, 0, name, "a second curve for the same motor", "one file for each motor; one file may hold several supply voltages", ""));
            }
            else
            {
                MeasuredTableResult result = MeasuredTable.ReadFile(path, motor.Motor, supplyVolts, stop);
                problems.AddRange(result.Problems);
                if (result.Points.Count > 0)
                {
                    fits.Add(PullOutFit.Of(motor.Name, motor.Motor, result.Points));
                }
            }
        }

        return fits;
    }

    /// <summary>The motors with the fitted ones in the place of those of the table.</summary>
    public static IReadOnlyList<MotorChoice> Apply(IReadOnlyList<MotorChoice> motors, IReadOnlyList<MeasuredFit> fits) =>
    [
        .. motors.Select(motor => fits.FirstOrDefault(fit => fit.Motor == motor.Name) is { } fit ? motor with { Motor = fit.Fitted, VoltageLossVolts = fit.VoltageLossVolts } : motor),
    ];
}
