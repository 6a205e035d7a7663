using System.Globalization;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using CsvHelper;

namespace AxisSim.Files.Maps;

/// <summary>Writes a map as CSV: one row a cell, column after column of the map, both coordinates in SI and as they were asked for.</summary>
internal static class MapCsv
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };

    /// <summary>Writes the rows one by one.</summary>
    public static void Write(Stream stream, MapHeader header, MapCells cells)
    {
        using var csv = CsvWriter.Create(stream, Options, leaveOpen: true);
        csv.WriteHeader([.. Names("x", header.X), .. Names("y", header.Y), "end", "computed", "failure_s", "slew_s", "settle_s", "duration_s", "torque_margin", "winding_continuous_degC"]);
        for (int place = 0; place < cells.Count; place++)
        {
            int column = place / cells.Rows, row = place % cells.Rows;
            CellResult cell = cells[place];
            csv.WriteField(header.X.SiValues[column], default, CultureInfo.InvariantCulture);
            csv.WriteField(header.X.Values[column], default, CultureInfo.InvariantCulture);
            csv.WriteField(header.Y.SiValues[row], default, CultureInfo.InvariantCulture);
            csv.WriteField(header.Y.Values[row], default, CultureInfo.InvariantCulture);
            csv.WriteField(Name(cell.End));
            csv.WriteField(cells.IsComputed(place) ? "1" : "0");
            Figure(csv, cell.FailureSeconds);
            Figure(csv, cell.SlewSeconds);
            Figure(csv, cell.SettleSeconds);
            Figure(csv, cell.DurationSeconds);
            Figure(csv, cell.TorqueMargin);
            Figure(csv, cell.ContinuousCelsius);
            csv.EndRecord();
        }
    }

    /// <summary>An end as a word of files.</summary>
    public static string Name(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "arrives",
        MoveEnd.DoesNotSettle => "does_not_settle",
        MoveEnd.ClutchSlips => "clutch_slips",
        MoveEnd.Stalls => "stalls",
        MoveEnd.NotWorkable => "not_workable",
        MoveEnd.Broken => "broken",
        MoveEnd.NotValid => "not_valid",
        _ => "unknown",
    };

    private static string[] Names(string letter, MapKey key)
    {
        string si = $"{letter}_{key.Key}{(key.SiUnit.Length == 0 ? "" : "_" + key.SiUnit)}";
        string shown = $"{letter}_shown{(key.Unit.Length == 0 ? "" : "_" + ColumnUnits.Written(key.Unit))}";
        return [si, shown];
    }

    private static void Figure(CsvWriter csv, double value)
    {
        if (double.IsFinite(value))
        {
            csv.WriteField(value, default, CultureInfo.InvariantCulture);
        }
        else
        {
            // No pull-out torque at all is minus infinity: a margin that was found, not one that is missing.
            csv.WriteField(double.IsNegativeInfinity(value) ? "-inf" : "");
        }
    }
}
