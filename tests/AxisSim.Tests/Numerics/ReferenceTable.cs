using System.Globalization;

namespace AxisSim.Tests.Numerics;

/// <summary>A stored table of tests/reference/data: comment lines, a line of column names, rows of numbers.</summary>
internal sealed class ReferenceTable
{
    private readonly Dictionary<string, double[]> _columns = [];

    private ReferenceTable(string path)
    {
        string[] lines = [.. File.ReadLines(path).Where(line => !line.StartsWith('#'))];
        string[] names = lines[0].Split(',');
        double[][] rows = [.. lines.Skip(1).Select(line => line.Split(',').Select(cell => double.TryParse(cell, CultureInfo.InvariantCulture, out double value) ? value : double.NaN).ToArray())];
        for (int i = 0; i < names.Length; i++)
        {
            _columns[names[i]] = [.. rows.Select(row => row[i])];
        }

        First = [.. lines.Skip(1).Select(line => line.Split(',')[0])];
    }

    /// <summary>First column as text (names of scalars).</summary>
    public IReadOnlyList<string> First { get; }

    public double[] this[string column] => _columns[column];

    public static ReferenceTable Read(string name) => new(Path.Combine(AppContext.BaseDirectory, "reference", name + ".csv"));

    public double Scalar(string quantity) => this["value"][First.ToList().IndexOf(quantity)];
}
