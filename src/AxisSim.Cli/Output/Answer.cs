using AxisSim.Cli.Text;

namespace AxisSim.Cli.Output;

/// <summary>The end of a command whose work is done and whose files, if any, are written.</summary>
internal static class Answer
{
    /// <summary>Prints the answer, as a document or as a page, and what went wrong with the files.</summary>
    /// <param name="host">Where to print.</param>
    /// <param name="folder">Folder of the files; null when none was asked for.</param>
    /// <param name="json">Whether the document is wanted.</param>
    /// <param name="document">Makes the document.</param>
    /// <param name="page">Writes the page.</param>
    /// <param name="code">Exit code when the files are well.</param>
    /// <returns>The exit code, or that of files that cannot be written.</returns>
    public static int Give(Host host, OutputFolder? folder, bool json, Func<string> document, Action<Page> page, int code = ExitCodes.Good) =>
        Give(host, folder, null, json, document, page, code);

    /// <summary>The same with a scenario that was to be written.</summary>
    public static int Give(Host host, OutputFolder? folder, NewScenario? scenario, bool json, Func<string> document, Action<Page> page, int code = ExitCodes.Good)
    {
        if (json)
        {
            host.Out.Write(document());
        }
        else
        {
            page(new Page(host.Out, host.Colour, host.Columns));
        }

        if ((folder?.Problem ?? scenario?.Problem) is not { } problem)
        {
            return code;
        }

        host.Error.WriteLine(problem.ToString());
        return ExitCodes.BadInput;
    }
}
