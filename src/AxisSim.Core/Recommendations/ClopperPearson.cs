using MathNet.Numerics.Distributions;

namespace AxisSim.Core.Recommendations;

/// <summary>Exact bounds of a probability from a count of independent trials.</summary>
/// <remarks>
/// Upper bound at confidence c after k of n: the p at which k or fewer happen with probability 1 - c, which is the c-quantile of Beta(k + 1, n - k); lower
/// bound: the (1 - c)-quantile of Beta(k, n - k + 1). Source: Clopper and Pearson, "The use of confidence or fiducial limits illustrated in the case of the
/// binomial", Biometrika 26 (1934) 404. With k = 0 the upper bound is <c>1 - (1 - c)^(1/n)</c>, near 3/n at 95 %: the rule of three.
/// </remarks>
public static class ClopperPearson
{
    /// <summary>One-sided upper bound.</summary>
    public static double Upper(int happened, int trials, double confidence)
    {
        Check(happened, trials, confidence);
        return happened == trials ? 1.0
            : happened == 0 ? -double.ExpM1(Math.Log(1.0 - confidence) / trials)
            : Beta.InvCDF(happened + 1.0, trials - happened, confidence);
    }

    /// <summary>One-sided lower bound.</summary>
    public static double Lower(int happened, int trials, double confidence)
    {
        Check(happened, trials, confidence);
        return happened == 0 ? 0.0
            : happened == trials ? Math.Exp(Math.Log(1.0 - confidence) / trials)
            : Beta.InvCDF(happened, trials - happened + 1.0, 1.0 - confidence);
    }

    private static void Check(int happened, int trials, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(happened);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(happened, trials);
        if (!(confidence > 0.0 && confidence < 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "a confidence lies between 0 and 1");
        }
    }
}
