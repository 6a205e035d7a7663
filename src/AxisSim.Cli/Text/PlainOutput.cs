using System.Text;
using Spectre.Console;

namespace AxisSim.Cli.Text;

/// <summary>A writer of a known width for the console library, whatever stands behind it.</summary>
internal sealed class PlainOutput(TextWriter writer, int width) : IAnsiConsoleOutput
{
    /// <inheritdoc/>
    public TextWriter Writer => writer;

    /// <inheritdoc/>
    public bool IsTerminal => false;

    /// <inheritdoc/>
    public int Width => width;

    /// <inheritdoc/>
    public int Height => 50;

    /// <inheritdoc/>
    public void SetEncoding(Encoding encoding)
    {
        // The writer keeps its own: texts are ASCII but for names of the user's own.
    }
}
