namespace AxisSim.Cli.Text;

/// <summary>What every reader of a prediction should keep in mind.</summary>
internal static class Cautions
{
    private static readonly string[] Lines =
    [
        "A moving mount can pinch and can drop its telescope: keep hands and cables clear and a switch within reach.",
        "Motors and supplies get hot and carry dangerous currents. The makers' manuals, local codes and licensed practice come before anything printed here.",
        "This is a prediction. Friction from datasheets is good to about 30 %; tube and pier are taken as rigid unless the scenario says otherwise. Try slow moves first.",
    ];

    /// <summary>Writes them.</summary>
    public static void Write(Page page)
    {
        page.Heading("Before you rely on it");
        foreach (string line in Lines)
        {
            page.Item("-", line);
        }
    }
}
