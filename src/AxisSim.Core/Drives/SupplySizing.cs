namespace AxisSim.Core.Drives;

/// <summary>What a supply is to give besides what the motors take through an ideal drive, and the fuse before it. Common practice, no source; the manuals of drive and supply come first.</summary>
/// <remarks>
/// <para>The simulation has no loss in the drive. With P the sum of the motors' peaks (A) and k drives: drives take <c>I = P/(1 - 0.15) + 0.05 k</c>, for their bridges lose some 15 % of what they
/// take and their electronics draw some 0.05 A each. The supply is rated for <c>I/0.8</c>: at no more than 80 % of its rating it stays cool and does not sink when both axes start at once.
/// The fuse is the least of the usual ratings with <c>I</c> at no more than 75 % of it, so that it does not age, and slow, for empty capacitors draw a surge when power comes.</para>
/// <para>Ratings: the preferred numbers of fuse-links (IEC 60127, series R 10; from memory), carried on to 100 A.</para>
/// </remarks>
public static class SupplySizing
{
    /// <summary>Share of what a drive takes that its bridges lose.</summary>
    public const double BridgeLossShare = 0.15;

    /// <summary>What the electronics of one drive draw, A.</summary>
    public const double OwnAmperes = 0.05;

    /// <summary>Share of its rating that a supply is used at.</summary>
    public const double SupplyUse = 0.8;

    /// <summary>Share of its rating that a fuse is used at.</summary>
    public const double FuseUse = 0.75;

    private static readonly double[] s_decade = [1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0];

    /// <summary>What drives take, A, whose motors take so much at their peak through an ideal drive.</summary>
    public static double DriveAmperes(double motorAmperes, int drives) => (motorAmperes / (1.0 - BridgeLossShare)) + (OwnAmperes * drives);

    /// <summary>Rating of the supply at least, A, for what its drives take.</summary>
    public static double SupplyAmperes(double driveAmperes) => driveAmperes / SupplyUse;

    /// <summary>Rating of the fuse, A; NaN above 100 A, where no common one is.</summary>
    public static double FuseAmperes(double driveAmperes)
    {
        double least = driveAmperes / FuseUse;
        return new[] { 0.1, 1.0, 10.0 }.SelectMany(decade => s_decade.Select(rating => Math.Round(decade * rating, 3))).Append(100.0).Where(rating => rating >= least - 1e-9).DefaultIfEmpty(double.NaN).First();
    }
}
