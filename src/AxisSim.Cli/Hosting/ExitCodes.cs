namespace AxisSim.Cli.Hosting;

/// <summary>The exit codes of all commands, in one place.</summary>
internal static class ExitCodes
{
    /// <summary>All is well.</summary>
    public const int Good = 0;

    /// <summary>A fault of this program.</summary>
    public const int OurFault = 1;

    /// <summary>Bad input, or a place that cannot be written.</summary>
    public const int BadInput = 2;

    /// <summary>The prediction is a failure.</summary>
    public const int PredictedFailure = 3;

    /// <summary>The terminal went away.</summary>
    public const int HungUp = 129;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;

    /// <summary>Told to end by the system or another program.</summary>
    public const int Terminated = 143;

    /// <summary>Each code with what it means.</summary>
    public static IReadOnlyList<(int Code, string Meaning)> Table { get; } =
    [
        (Good, "done; for simulate and report: the mount arrives and settles"),
        (PredictedFailure, "the prediction is a stall, a slipping clutch, or no settling; for recommend: no setting holds"),
        (BadInput, "bad input, figures that the model cannot follow, or files that cannot be written; the message says what and where"),
        (OurFault, "a fault of this program"),
        (Stopped, "stopped with Ctrl-C"),
        (HungUp, "its terminal was closed (SIGHUP)"),
        (Terminated, "told to end (SIGTERM)"),
    ];
}
