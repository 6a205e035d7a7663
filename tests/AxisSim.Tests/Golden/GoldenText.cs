namespace AxisSim.Tests.Golden;

/// <summary>Compares a text with a stored one. Set AXISSIM_REFRESH_GOLDEN=1 to store what the program says now.</summary>
internal static class GoldenText
{
    public static void Check(string name, string actual)
    {
        CheckFile(Repository.PathOf("tests", "AxisSim.Tests", "Golden", name), actual);
    }

    public static void CheckFile(string path, string actual)
    {
        if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
        {
            File.WriteAllText(path, actual);
        }

        Assert.True(File.Exists(path), $"no golden file {path}; run the tests once with AXISSIM_REFRESH_GOLDEN=1 and read it");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), actual.ReplaceLineEndings("\n"));
    }
}
