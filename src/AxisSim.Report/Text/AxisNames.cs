using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Report.Text;

/// <summary>Names of the axes in keys, file names and sentences.</summary>
internal static class AxisNames
{
    /// <summary>The name in keys and file names.</summary>
    public static string Key(this MountAxis axis) => axis == MountAxis.Polar ? "polar" : "declination";

    /// <summary>The name in a sentence.</summary>
    public static string Words(this MountAxis axis) => axis == MountAxis.Polar ? "polar axis" : "declination axis";

    /// <summary>The axes that a setup has.</summary>
    public static IReadOnlyList<MountAxis> Of(MountSetup setup) =>
        [.. new[] { MountAxis.Polar, MountAxis.Declination }.Where(axis => (axis == MountAxis.Polar ? setup.Polar : setup.Declination) is not null)];
}
