namespace AxisSim.Cli.Hosting;

/// <summary>What a command may use of the world: where to write, and when to stop.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Problems and progress.</param>
internal sealed record Host(TextWriter Out, TextWriter Error)
{
    /// <summary>Whether results go to a terminal that shows colour.</summary>
    public bool Colour { get; init; }

    /// <summary>Whether progress can be overwritten in place.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Columns of the terminal.</summary>
    public int Columns { get; init; } = 96;

    /// <summary>Set when the user asks to stop.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>The exit code after such a stop.</summary>
    public Func<int> StoppedCode { get; init; } = () => ExitCodes.Stopped;

    /// <summary>Files written so far, as paths that the user can open.</summary>
    public List<string> Written { get; } = [];
}
