using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Files.Motors;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>Values of the options of a comparison, checked like <see cref="OptionValues"/> does.</summary>
internal sealed class CompareOptionValues(List<Problem> problems)
{
    /// <summary>Margin when the option is left out: what datasheet friction is good to (common practice, no source).</summary>
    public const double DefaultMargin = 0.3;

    private const int MostValues = 12;
    private const double LeastShare = 0.1;
    private const double GreatestShare = 2.0;
    private const double GreatestRatio = 1e5;
    private const double GreatestVoltage = 400.0;

    /// <summary>The motors; empty after a problem.</summary>
    public IReadOnlyList<MotorChoice> Motors(string? path, CancellationToken stop)
    {
        if (path is null)
        {
            Add("--motors", "nothing", "a table of motors (CSV, docs/catalogue.md)", "--motors catalogues/motors.csv");
            return [];
        }

        MotorTableResult result = MotorTable.ReadFile(path, stop);
        problems.AddRange(result.Problems);
        return result.Motors;
    }

    /// <summary>Total reductions; a lone null for that of the scenario.</summary>
    public IReadOnlyList<double?> Ratios(string? text) =>
        List("--ratios", text, null, GreatestRatio, "up to 12 different total reductions, motor revolutions per axis revolution, parted by commas", "--ratios 144,216,360");

    /// <summary>Supply voltages; a lone null for that of the scenario.</summary>
    public IReadOnlyList<double?> Voltages(string? text) =>
        List("--voltages", text, Dimension.Voltage, GreatestVoltage, "up to 12 different voltages parted by commas, the unit once at the end", "--voltages \"12,24,36 V\"");

    /// <summary>Margin as a share.</summary>
    public double Margin(string? text) => ShareOption.Margin(problems, text, DefaultMargin);

    /// <summary>Slew current over rated current.</summary>
    public double CurrentShare(string? text) => ShareOption.Read(problems, "--current-share", text, 1.0, (LeastShare, GreatestShare), "from 10 % to 200 % of the rated current", "--current-share 80%");

    private IReadOnlyList<double?> List(string option, string? text, Dimension? dimension, double most, string allowed, string fix)
    {
        if (text is null)
        {
            return [null];
        }

        IReadOnlyList<double?> Refuse(string why)
        {
            Add(option, $"\"{text}\" ({why})", allowed, fix);
            return [null];
        }

        string[] parts = [.. text.Split(',').Select(part => part.Trim())];
        if (parts.FirstOrDefault(part => NumberText.Length(part) == 0) is { } strange)
        {
            return Refuse(strange.Length == 0 ? "a value is missing" : $"there is no number at the start of \"{strange}\"");
        }

        int end = NumberText.Length(parts[^1]);
        string unit = UnitSpelling.Plain(parts[^1][end..]);
        if (parts[..^1].FirstOrDefault(part => NumberText.Length(part) < part.Length) is { } early)
        {
            return Refuse($"more than a number in \"{early}\"; the unit stands once, at the end");
        }

        double scale = 1.0;
        if (dimension is { } wanted)
        {
            QuantityReading last = QuantityText.Read(parts[^1], wanted);
            if (last.Failure is { } failure)
            {
                return Refuse(failure);
            }

            scale = last.Si / double.Parse(parts[^1][..end], CultureInfo.InvariantCulture);
        }
        else if (unit.Length > 0)
        {
            return Refuse("a reduction has no unit");
        }

        double[] values = [.. parts.Select(part => double.Parse(part[..NumberText.Length(part)], CultureInfo.InvariantCulture) * scale)];
        return values.Any(value => !(value > 0.0 && value <= most)) ? Refuse($"a value that is not above 0 and up to {Say.Number(most)}")
            : values.Distinct().Count() < values.Length ? Refuse("a value twice; a comma parts two values and is not a decimal point")
            : values.Length > MostValues ? Refuse($"{Say.Count(values.Length)} values")
            : [.. values.Select(value => (double?)value)];
    }

    private void Add(string option, string found, string allowed, string fix) => problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
