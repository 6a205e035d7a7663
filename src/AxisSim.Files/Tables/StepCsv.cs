using AxisSim.Core.Outcomes;
using CsvHelper;

namespace AxisSim.Files.Tables;

/// <summary>Writes every step of a run as CSV in SI units while it is made, the unit in each column's name: a row for each step, with the time at its end.</summary>
public sealed class StepCsv : IStepSink, IDisposable
{
    private readonly CsvWriter csv;

    /// <summary>Begins the table on a stream, which stays open.</summary>
    public StepCsv(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        csv = CsvWriter.Create(stream, NumberColumns.Options, leaveOpen: true);
        csv.WriteHeader(["time_s", .. TraceColumn.All.Select(column => column.Single)]);
    }

    /// <inheritdoc/>
    public void Take(in StepSample sample)
    {
        NumberColumns.Write(csv, sample.TimeSeconds);
        foreach (TraceColumn column in TraceColumn.All)
        {
            NumberColumns.Write(csv, sample[column.Quantity]);
        }

        csv.EndRecord();
    }

    /// <inheritdoc/>
    public void Dispose() => csv.Dispose();
}
