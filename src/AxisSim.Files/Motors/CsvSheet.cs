using CsvHelper;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Motors;

/// <summary>A row of a table with the line at which it stands.</summary>
internal sealed record CsvRow(int Line, string[] Fields);

/// <summary>A table of comma-separated values: lines that begin with # are comments, the first other line names the columns.</summary>
internal sealed class CsvSheet
{
    private static readonly CsvReaderOptions Options = CsvReaderOptions.Default with { HasHeader = false, Separator = ',', CommentPrefix = '#', TrackLineNumbers = true };

    private CsvSheet(string file, CsvRow header, IReadOnlyList<CsvRow> rows) => (File, Header, Rows) = (file, header, rows);

    /// <summary>File as the user gave it.</summary>
    public string File { get; }

    /// <summary>Names of the columns.</summary>
    public CsvRow Header { get; }

    /// <summary>Rows that have as many fields as there are columns.</summary>
    public IReadOnlyList<CsvRow> Rows { get; }

    /// <summary>The table; null when it cannot be taken for one. Problems of form are added.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">File as the user gave it.</param>
    /// <param name="example">A line of column names to show.</param>
    /// <param name="problems">Where problems go.</param>
    public static CsvSheet? Read(string text, string file, string example, List<Problem> problems)
    {
        var rows = new List<CsvRow>();
        try
        {
            using CsvReader csv = CsvReader.FromText(text, Options);
            while (csv.Read())
            {
                string[] fields = [.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i).Trim())];
                if (Array.Exists(fields, field => field.Length > 0))
                {
                    rows.Add(new CsvRow((int)csv.LineNumber, fields));
                }
            }
        }
        catch (CsvFormatException error)
        {
            problems.Add(new Problem(file, (int)error.LineNumber, 0, "", $"a line that is no record of comma-separated values ({error.Message.TrimEnd('.')})", "fields parted by commas, quotes in pairs", ""));
            return null;
        }

        if (rows.Count == 0)
        {
            problems.Add(new Problem(file, 0, 0, "", "no line of column names", "a line of column names, then a line for each row", example));
            return null;
        }

        CsvRow header = rows[0];
        if (header.Fields.Length == 1 && header.Fields[0].AsSpan().IndexOfAny(';', '\t') >= 0)
        {
            problems.Add(new Problem(file, header.Line, 0, "", $"{(header.Fields[0].Contains(';', StringComparison.Ordinal) ? "semicolons" : "tabs")} between the fields", "commas between the fields, and a decimal point in numbers", example));
            return null;
        }

        foreach (CsvRow row in rows.Skip(1).Where(row => row.Fields.Length != header.Fields.Length))
        {
            string hint = row.Fields.Length > header.Fields.Length ? "; a comma parts two fields and is not a decimal point" : "; a field that is left out still needs its comma";
            problems.Add(new Problem(file, row.Line, 0, "", FormattableString.Invariant($"{row.Fields.Length} fields where there are {header.Fields.Length} columns{hint}"), "one field for each column", ""));
        }

        if (rows.Count == 1)
        {
            problems.Add(new Problem(file, header.Line, 0, "", "column names and no row below them", "a line for each row", ""));
        }

        return new CsvSheet(file, header, [.. rows.Skip(1).Where(row => row.Fields.Length == header.Fields.Length)]);
    }
}
