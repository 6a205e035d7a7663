using System.Text;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;

namespace AxisSim.Files.Tables;

/// <summary>Writes an envelope as CSV in SI units, the unit in each column's name.</summary>
public static class EnvelopeCsv
{
    /// <summary>
    /// Writes one row per ramp, and per curve three columns: the greatest safe rate (empty when there is none), the first rate that fails (empty when none was
    /// found), and the greatest rate that the search allows.
    /// </summary>
    /// <param name="stream">Where to.</param>
    /// <param name="curves">Name and answers of each curve; all with the same ramps.</param>
    public static void Write(Stream stream, IReadOnlyList<(string Name, IReadOnlyList<GreatestRate> Rates)> curves)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(curves);
        var columns = new List<(string, IReadOnlyList<double>)> { ("ramp_s", curves.Count == 0 ? [] : [.. curves[0].Rates.Select(rate => rate.RampSeconds)]) };
        foreach ((string name, IReadOnlyList<GreatestRate> rates) in curves)
        {
            string part = Plain(name);
            columns.Add(($"greatest_safe_rate_{part}_rad_per_s", [.. rates.Select(rate => rate.RateRadiansPerSecond)]));
            columns.Add(($"first_failing_rate_{part}_rad_per_s", [.. rates.Select(rate => rate.FirstFailingRadiansPerSecond)]));
            columns.Add(($"greatest_rate_of_search_{part}_rad_per_s", [.. rates.Select(rate => rate.TopRadiansPerSecond)]));
        }

        NumberColumns.Write(stream, columns);
    }

    // A name such as "0.9 A" becomes part of a column's name: letters, digits, points, and one underscore for all else.
    private static string Plain(string name)
    {
        var plain = new StringBuilder();
        foreach (char letter in name)
        {
            if (char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-')
            {
                plain.Append(letter);
            }
            else if (plain.Length > 0 && plain[^1] != '_')
            {
                plain.Append('_');
            }
        }

        return plain.ToString().TrimEnd('_');
    }
}
