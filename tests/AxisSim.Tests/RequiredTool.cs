namespace AxisSim.Tests;

/// <summary>A program that a test needs: the test skips where it is missing, and fails when CI is true.</summary>
internal static class RequiredTool
{
    /// <summary>Path of the tool.</summary>
    /// <param name="name">Name of the program.</param>
    /// <param name="packages">Debian packages that bring it.</param>
    public static string Find(string name, string packages)
    {
        string? found = (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => Path.Combine(folder, name))
            .FirstOrDefault(File.Exists);
        string reason = $"{name} is missing; apt-get install {packages}";
        if (Environment.GetEnvironmentVariable("CI") == "true")
        {
            Assert.True(found is not null, reason);
        }

        Skip.If(found is null, reason);
        return found!;
    }
}
