using System.Diagnostics;
using AxisSim.Cli.Text;

namespace AxisSim.Cli.Output;

/// <summary>Says on the error stream what is being done and how long it may still take, once that takes over two seconds.</summary>
internal sealed class ProgressLine : IDisposable
{
    private const double QuietSeconds = 2.0;
    private const double TerminalSeconds = 0.25;
    private const double PipeSeconds = 5.0;

    private readonly TextWriter writer;
    private readonly bool terminal;
    private readonly Lock gate = new();
    private readonly Dictionary<string, (string Doing, double Share, double Since)> parts = new(StringComparer.Ordinal);
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly Timer timer;
    private double next;
    private int shown;

    public ProgressLine(TextWriter writer, bool terminal)
    {
        (this.writer, this.terminal, next) = (writer, terminal, terminal ? QuietSeconds : PipeSeconds);
        timer = new Timer(_ => Tick(), null, TimeSpan.FromSeconds(QuietSeconds), TimeSpan.FromSeconds(TerminalSeconds));
    }

    /// <summary>Takes note of what a part of the work is doing, and its share done, 0 to 1.</summary>
    public void Report(string part, string doing, double share)
    {
        lock (gate)
        {
            double since = parts.TryGetValue(part, out var before) && before.Doing == doing ? before.Since : clock.Elapsed.TotalSeconds;
            parts[part] = (doing, share, since);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        timer.Dispose();
        lock (gate)
        {
            if (terminal && shown > 0)
            {
                writer.Write("\r" + new string(' ', shown) + "\r");
                writer.Flush();
            }

            shown = 0;
            next = double.PositiveInfinity;
        }
    }

    private void Tick()
    {
        lock (gate)
        {
            double now = clock.Elapsed.TotalSeconds;
            if (now < next || parts.Count == 0)
            {
                return;
            }

            next = now + (terminal ? TerminalSeconds : PipeSeconds);
            string line = string.Join("; ", parts.Select(part => Line(part.Key, part.Value.Doing, part.Value.Share, now - part.Value.Since)));
            if (terminal)
            {
                writer.Write("\r" + line + new string(' ', Math.Max(0, shown - line.Length)));
                writer.Flush();
                shown = line.Length;
            }
            else
            {
                writer.WriteLine(line);
            }
        }
    }

    private static string Line(string part, string doing, double share, double seconds)
    {
        // A search may find its answer early.
        string left = share >= 1.0 ? "done"
            : share > 0.0 ? $"{(doing.StartsWith("search", StringComparison.Ordinal) ? "at most " : "")}about {Say.Number(Math.Ceiling(seconds / share * (1.0 - share)))} s left"
            : $"{Say.Number(Math.Ceiling(seconds))} s so far";
        return $"{part}: {doing}, {left}";
    }
}
