using System.Globalization;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>Values of the options of the lesson on the reduction, checked like <see cref="OptionValues"/> does.</summary>
internal sealed class ReductionOptionValues(List<Problem> problems)
{
    /// <summary>Points when the option is left out: half octaves over the default range, with the scenario's own among them.</summary>
    public const int DefaultPoints = 11;

    /// <summary>As many as a figure shows apart; each takes some tens of moves.</summary>
    public const int MostPoints = 60;

    private const double LeastRatio = 0.1;
    private const double GreatestRatio = 100_000.0;
    private const double GreatestMargin = 90.0;
    private const string Allowed = "a total reduction from 0.1 to 100000, a plain number: motor turns per turn of the axis";

    /// <summary>A reduction at an end of the range; null when the option is left out or wrong.</summary>
    public double? Ratio(string option, string? text)
    {
        if (text is null)
        {
            return null;
        }

        double? ratio = Number(text);
        if (ratio is null || !InBounds(ratio.Value))
        {
            Add(option, $"\"{text}\"{Why(text, ratio)}", Allowed, $"{option} 100");
            return null;
        }

        return ratio;
    }

    /// <summary>The list of reductions; null when the option is left out or wrong.</summary>
    public IReadOnlyList<double>? Ratios(string? text)
    {
        if (text is null)
        {
            return null;
        }

        const string form = "up to 60 different total reductions from 0.1 to 100000, plain numbers with commas between them";
        const string example = "--ratios \"100,216,360,720\"";
        string[] parts = [.. text.Split(',').Select(part => part.Trim())];
        (string Part, double? Ratio)[] read = [.. parts.Select(part => (part, Number(part)))];
        if (read.FirstOrDefault(item => item.Ratio is null || !InBounds(item.Ratio.Value)) is { Part: { } part } wrong)
        {
            Add("--ratios", part.Length == 0 ? $"\"{text}\" (a number is missing)" : $"\"{part}\"{Why(part, wrong.Ratio)}", form, example);
            return null;
        }

        double[] ratios = [.. read.Select(item => item.Ratio!.Value).Order()];
        if (ratios.Distinct().Count() < ratios.Length)
        {
            Add("--ratios", $"\"{text}\" (a reduction twice; a comma parts two reductions and is not a decimal point)", form, example);
            return null;
        }

        if (ratios.Length > MostPoints)
        {
            Add("--ratios", $"{Say.Count(ratios.Length)} reductions", form, example);
            return null;
        }

        return ratios;
    }

    /// <summary>Whether list and range are not given together.</summary>
    public void Apart(string? ratios, params string?[] range)
    {
        if (ratios is not null && range.Any(text => text is not null))
        {
            Add("--ratios", "a list together with --from, --to or --points", "either the list or the range", "--ratios \"100,216,360\" alone");
        }
    }

    /// <summary>Number of reductions.</summary>
    public int Points(string? text) => WholeNumber.Read(problems, "--points", text, DefaultPoints, 2, MostPoints, "--points 11");

    /// <summary>Margin as a share.</summary>
    public double Margin(string? text, double otherwise)
    {
        if (text is null)
        {
            return otherwise;
        }

        const string allowed = "a share of the motor's torque in per cent, from 0 % to 90 %", example = "--margin \"30 %\"";
        string number = text.Trim().TrimEnd('%').TrimEnd();
        double? percent = Number(number);
        if (!text.TrimEnd().EndsWith('%'))
        {
            Add("--margin", $"\"{text}\" ({(percent is null ? "no number at its start" : "a number without its %")})", allowed, example);
            return otherwise;
        }

        if (percent is null || !(percent >= 0.0 && percent <= GreatestMargin))
        {
            Add("--margin", $"\"{text}\"{(percent is null ? Why(number, null) : "")}", allowed, example);
            return otherwise;
        }

        return percent.Value / 100.0;
    }

    /// <summary>Reports a range that is none.</summary>
    public void Range(double from, double to) =>
        Add("--from", $"a range from {Say.Number(from, 6)} to {Say.Number(to, 6)}", "a range that ends above its start", $"--from {Say.Number(Math.Min(from, to), 6)} --to {Say.Number(2.0 * Math.Max(from, to), 6)}");

    private static bool InBounds(double ratio) => ratio >= LeastRatio && ratio <= GreatestRatio;

    private static double? Number(string text)
    {
        string trimmed = text.Trim();
        return trimmed.Length > 0 && NumberText.Length(trimmed) == trimmed.Length ? double.Parse(trimmed, CultureInfo.InvariantCulture) : null;
    }

    private static string Why(string text, double? number) =>
        number is <= 0.0 ? " (a reduction is above 0)"
        : number is not null ? ""
        : NumberText.LooksNotFinite(text) ? " (not a finite number)"
        : NumberText.HasDecimalComma(text, NumberText.Length(text)) ? " (a comma is not a decimal point)"
        : NumberText.Length(text.Trim()) == 0 ? " (no number at its start)"
        : " (more than a number)";

    private void Add(string option, string found, string allowed, string fix) => problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
