using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Tables;

/// <summary>Writes traces as CSV in SI units, the unit in each column's name.</summary>
public static class TraceCsv
{
    /// <summary>Writes a row for each stretch of the trace: its start and end, and the least and greatest of each quantity in it.</summary>
    public static void Write(Stream stream, Trace trace)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(trace);
        NumberColumns.Write(
            stream,
            [
                ("time_from_s", trace.FromSeconds),
                ("time_to_s", trace.ToSeconds),
                .. TraceColumn.All.SelectMany(column => column.Of(trace[column.Quantity])),
            ]);
    }

    /// <summary>Writes a row for each step, with the time at its end.</summary>
    public static void Write(Stream stream, StepRows rows)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(rows);
        NumberColumns.Write(stream, [("time_s", rows.TimeSeconds), .. TraceColumn.All.Select(column => (column.Single, rows[column.Quantity]))]);
    }

    /// <summary>Writes a row for each stretch of a close-up.</summary>
    public static void Write(Stream stream, CloseUp closeUp)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(closeUp);
        TraceColumn column = TraceColumn.Of(closeUp.Quantity);
        NumberColumns.Write(
            stream,
            [("time_from_s", closeUp.FromSeconds), ("time_to_s", closeUp.ToSeconds), (column.Part("least"), closeUp.Least), (column.Part("greatest"), closeUp.Greatest)]);
    }
}
