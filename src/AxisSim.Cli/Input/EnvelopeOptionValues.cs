using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>Values of the options of an envelope, checked like <see cref="OptionValues"/> does.</summary>
internal sealed class EnvelopeOptionValues(List<Problem> problems)
{
    /// <summary>Points when the option is left out: enough for a curve, few enough for the screen.</summary>
    public const int DefaultPoints = 8;

    private const int MostPoints = 200;
    private const double LongestRamp = 600.0;
    private const string RampExample = "--ramp \"0.3..6 s\"";

    /// <summary>First and last ramp, s; null when the option is left out or wrong.</summary>
    public (double From, double To)? Ramp(string? text)
    {
        if (text is null)
        {
            return null;
        }

        const string allowed = "FROM..TO with a unit of time at the end, both above 0 and up to 600 s, FROM below TO; or a single time";
        int dots = text.IndexOf("..", StringComparison.Ordinal);
        string last = dots < 0 ? text.Trim() : text[(dots + 2)..].Trim();
        string first = dots < 0 ? last : text[..dots].Trim();
        QuantityReading to = QuantityText.Read(last, Dimension.Time);
        string unit = last[NumberText.Length(last)..].Trim();
        QuantityReading from = QuantityText.Read(NumberText.Length(first) == first.Length ? $"{first} {unit}" : first, Dimension.Time);
        if ((to.Failure ?? from.Failure) is { } failure)
        {
            Add("--ramp", $"\"{text}\" ({failure})", allowed, RampExample);
            return null;
        }

        if (!(from.Si > 0.0 && to.Si <= LongestRamp && (from.Si < to.Si || dots < 0)))
        {
            Add("--ramp", $"\"{text}\"{(from.Si >= to.Si ? " (FROM is not below TO)" : "")}", allowed, RampExample);
            return null;
        }

        return (from.Si, to.Si);
    }

    /// <summary>Margin on the load as a share; none where the option is left out.</summary>
    public double Margin(string? text) => ShareOption.Margin(problems, text, 0.0);

    /// <summary>Number of ramps.</summary>
    public int Points(string? text) => WholeNumber.Read(problems, "--points", text, DefaultPoints, 2, MostPoints, "--points 8");

    private void Add(string option, string found, string allowed, string fix) => problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
