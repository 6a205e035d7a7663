using AxisSim.Cli;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The program, run in this process.</summary>
internal static class InProcess
{
    private static readonly string[] s_cultures = ["", "fr-FR", "tr-TR"];

    public static (int Code, string Output, string Error) Run(params string[] args)
    {
        using StringWriter output = new() { NewLine = "\n" }, error = new() { NewLine = "\n" };
        int code = Program.Run(args, output, error);
        return (code, output.ToString(), error.ToString());
    }

    /// <summary>Under several cultures: exit code 2, nothing on the output, a message that helps, and no trace of the stack.</summary>
    public static void AssertRefused(string message, params string[] args)
    {
        foreach (string culture in s_cultures)
        {
            (int code, string output, string error) = Cultures.Under(culture, () => Run(args));
            Assert.Equal(2, code);
            Assert.Empty(output);
            Assert.Contains(message, error, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        }
    }
}
