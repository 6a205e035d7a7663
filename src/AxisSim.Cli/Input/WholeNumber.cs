using System.Globalization;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Options that take a whole number.</summary>
internal static class WholeNumber
{
    /// <summary>The number; <paramref name="otherwise"/> when the option is left out, or is wrong and was reported.</summary>
    public static int Read(List<Problem> problems, string option, string? text, int otherwise, int least, int most, string fix)
    {
        if (text is null)
        {
            return otherwise;
        }

        if (!int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < least || number > most)
        {
            problems.Add(new Problem(option, 0, 0, "", $"\"{text}\"", string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"), fix));
            return otherwise;
        }

        return number;
    }
}
