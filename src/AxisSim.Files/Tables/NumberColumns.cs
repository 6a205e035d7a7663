using System.Globalization;
using CsvHelper;

namespace AxisSim.Files.Tables;

/// <summary>Writes named columns of numbers as CSV: comma, decimal point, LF, shortest digits that read back exactly; not-a-number is empty.</summary>
internal static class NumberColumns
{
    /// <summary>The form of every table.</summary>
    public static readonly CsvWriterOptions Options = CsvWriterOptions.Default with { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };

    /// <summary>Writes the columns; all must be of one length.</summary>
    public static void Write(Stream stream, IReadOnlyList<(string Name, IReadOnlyList<double> Values)> columns)
    {
        int rows = columns.Count == 0 ? 0 : columns[0].Values.Count;
        foreach ((string name, IReadOnlyList<double> values) in columns)
        {
            if (values.Count != rows)
            {
                throw new ArgumentException($"column {name} has {values.Count} values, the first has {rows}", nameof(columns));
            }
        }

        using var csv = CsvWriter.Create(stream, Options, leaveOpen: true);
        csv.WriteHeader([.. columns.Select(column => column.Name)]);
        for (int row = 0; row < rows; row++)
        {
            foreach ((string _, IReadOnlyList<double> values) in columns)
            {
                Write(csv, values[row]);
            }

            csv.EndRecord();
        }
    }

    /// <summary>Writes one number.</summary>
    public static void Write(CsvWriter csv, double value)
    {
        if (double.IsFinite(value))
        {
            csv.WriteField(value, default, CultureInfo.InvariantCulture);
        }
        else
        {
            csv.WriteField("");
        }
    }
}
