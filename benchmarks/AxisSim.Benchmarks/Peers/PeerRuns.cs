using System.Globalization;

namespace AxisSim.Benchmarks.Peers;

/// <summary>This program's side of benchmarks/peers: one run a call, its figure as one line of JSON.</summary>
/// <remarks>What runs on one thread is measured in processor time of the process, so that another program's turn on the core does not count; the map on the clock.</remarks>
internal static class PeerRuns
{
    private const string Usage = "peers scalar | states | lanes LANES | map THREADS [STEP_US [GRID_FILE]]";

    /// <summary>Runs what is asked for; the exit code.</summary>
    public static int Run(string[] args, TextWriter output)
    {
        switch (args)
        {
            case ["scalar"]:
                PeerSlews.Time(output);
                return 0;
            case ["states"]:
                PeerSlews.States(output);
                return 0;
            case ["lanes", string lanes] when Whole(lanes, out int count):
                PeerLanes.Time(output, count);
                return 0;
            case ["map", string threads, ..] when args.Length <= 4 && Whole(threads, out int count):
                double microseconds = 50.0;
                if (args.Length > 2 && !(double.TryParse(args[2], NumberStyles.Float, CultureInfo.InvariantCulture, out microseconds) && microseconds > 0.0))
                {
                    break;
                }

                PeerMap.Time(output, count, microseconds / 1e6, args.Length > 3 ? args[3] : null);
                return 0;
            default:
                break;
        }

        output.WriteLine($"usage: {Usage}");
        return 2;
    }

    /// <summary>One line of JSON from names and values; texts are quoted, numbers written so that they read back the same.</summary>
    public static void Line(TextWriter output, params ReadOnlySpan<(string Name, object Value)> fields)
    {
        string separator = "{";
        foreach ((string name, object value) in fields)
        {
            string text = value is string s ? $"\"{s}\"" : ((IFormattable)value).ToString("R", CultureInfo.InvariantCulture);
            output.Write($"{separator}\"{name}\":{text}");
            separator = ",";
        }

        output.WriteLine("}");
        output.Flush();
    }

    private static bool Whole(string text, out int value) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value > 0;
}
