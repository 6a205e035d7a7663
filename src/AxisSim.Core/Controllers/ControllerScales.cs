using AxisSim.Core.Sky;

namespace AxisSim.Core.Controllers;

/// <summary>The numbers that a user's own controller takes.</summary>
/// <param name="Name">What the user calls it.</param>
/// <param name="Polar">Those of the polar axis.</param>
/// <param name="Declination">Those of the declination axis.</param>
public sealed record ControllerScales(string Name, IReadOnlyList<ControllerScale> Polar, IReadOnlyList<ControllerScale> Declination)
{
    /// <summary>The numbers of an axis.</summary>
    public IReadOnlyList<ControllerScale> Of(MountAxis axis) => axis == MountAxis.Polar ? Polar : Declination;
}
