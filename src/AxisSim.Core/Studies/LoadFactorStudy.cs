using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Greatest common factor on inertia, imbalance and friction at which the simulated move still arrives.</summary>
internal static class LoadFactorStudy
{
    /// <summary>End of the search.</summary>
    public const double Most = 6.0;

    private static readonly double[] Scan = [1.3, 1.7, 2.4, 3.5, Most];

    /// <summary>The factor to within 1 %, for a setup that arrives as it is.</summary>
    public static LoadFactor Of(MountSetup setup, MountAxis axis, double stepSeconds)
    {
        bool Arrives(double factor) => Arrival.Of(setup, axis, stepSeconds, factor);
        int first = EdgeSearch.First(Scan, Arrives, wanted: false);
        if (first < 0)
        {
            return new LoadFactor(Most, AtLeast: true);
        }

        (double low, _) = EdgeSearch.Narrow(first == 0 ? 1.0 : Scan[first - 1], Scan[first], Arrives, answerAtLow: true, tolerance: 0.01);
        return new LoadFactor(low, AtLeast: false);
    }
}
