using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>An option whose value is a share: "30%" or 0.3.</summary>
internal static class ShareOption
{
    /// <summary>Greatest margin that may be asked for: five times the load.</summary>
    private const double GreatestMargin = 4.0;

    /// <summary>The margin on the load that <c>--margin</c> asks for, as a share.</summary>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="text">The value; null where the option is left out.</param>
    /// <param name="otherwise">Its value then.</param>
    public static double Margin(List<Problem> problems, string? text, double otherwise) =>
        Read(problems, "--margin", text, otherwise, (0.0, GreatestMargin), "from 0 % to 400 %", "--margin 30%");

    /// <summary>A share within a range.</summary>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="option">The option.</param>
    /// <param name="text">The value; null where the option is left out.</param>
    /// <param name="otherwise">Its value then.</param>
    /// <param name="range">Least and greatest.</param>
    /// <param name="allowed">The same in words.</param>
    /// <param name="fix">What to write.</param>
    public static double Read(List<Problem> problems, string option, string? text, double otherwise, (double Least, double Greatest) range, string allowed, string fix)
    {
        if (text is null)
        {
            return otherwise;
        }

        QuantityReading reading = QuantityText.Read(text, Dimension.Share);
        if (reading.Failure is null && reading.Si >= range.Least && reading.Si <= range.Greatest)
        {
            return reading.Si;
        }

        problems.Add(new Problem(option, 0, 0, "", $"\"{text}\"{(reading.Failure is null ? "" : $" ({reading.Failure})")}", allowed, fix));
        return otherwise;
    }
}
