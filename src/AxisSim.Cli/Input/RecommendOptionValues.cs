using AxisSim.Core.Recommendations;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>Values of the options of a recommendation, checked like <see cref="OptionValues"/> does.</summary>
internal sealed class RecommendOptionValues(List<Problem> problems)
{
    /// <summary>Mounts drawn when the option is left out.</summary>
    public const int DefaultSamples = 200;

    /// <summary>Margin when the option is left out: datasheet friction is good to about 30 % (common practice, no source).</summary>
    public const double DefaultMargin = 0.3;

    private const int MostSamples = 100_000;
    private const double LeastMargin = 0.01;
    private const double MostMargin = 3.0;
    private static readonly string[] Aims = ["balanced", "fastest", "quietest", "coolest"];

    /// <summary>What is wanted most.</summary>
    public RecommendAim Aim(string? aim)
    {
        int index = Array.IndexOf(Aims, aim ?? Aims[0]);
        if (index < 0)
        {
            Add("--aim", $"\"{aim}\"", "fastest, quietest, coolest or balanced", "--aim " + (NearestName.Of(aim!, Aims) ?? Aims[0]));
            return RecommendAim.Balanced;
        }

        return (RecommendAim)index;
    }

    /// <summary>The margin as a share.</summary>
    public double Margin(string? margin)
    {
        if (margin is null)
        {
            return DefaultMargin;
        }

        const string allowed = "a share from 1 % to 300 %, as \"30 %\" or 0.3: 30 % asks for a load factor of 1.3";
        QuantityReading reading = QuantityText.Read(margin, Dimension.Share);
        if (reading.Failure is { } failure)
        {
            Add("--margin", $"\"{margin}\" ({failure})", allowed, reading.Fix is { } fix ? $"--margin \"{fix}\"" : "--margin 30%");
            return DefaultMargin;
        }

        if (!(reading.Si >= LeastMargin - 1e-12 && reading.Si <= MostMargin + 1e-12))
        {
            string plain = reading.Si > MostMargin && !margin.Contains('%', StringComparison.Ordinal) && reading.Si <= 100.0 * MostMargin ? $"--margin {Say.Number(reading.Si)}%" : "--margin 30%";
            Add("--margin", $"\"{margin}\"", allowed, plain);
            return DefaultMargin;
        }

        return reading.Si;
    }

    /// <summary>Mounts to draw.</summary>
    public int Samples(string? text) => WholeNumber.Read(problems, "--samples", text, DefaultSamples, 1, MostSamples, "--samples 200");

    /// <summary>Seed of the draw.</summary>
    public int Seed(string? text) => WholeNumber.Read(problems, "--seed", text, 1, 0, int.MaxValue, "--seed 1");

    private void Add(string option, string found, string allowed, string fix) => problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
