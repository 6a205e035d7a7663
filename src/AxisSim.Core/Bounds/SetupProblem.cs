namespace AxisSim.Core.Bounds;

/// <summary>One figure that will not do.</summary>
/// <param name="What">Which, as a path of properties: <c>Polar.Motor.RotorInertiaKilogramSquareMetres</c>.</param>
/// <param name="Found">What it is and, where that is not plain, why it will not do.</param>
/// <param name="Allowed">What is allowed, in SI units.</param>
public sealed record SetupProblem(string What, string Found, string Allowed)
{
    /// <summary>A message tells no more problems than this; the rest would bury the first.</summary>
    internal const int Most = 50;

    /// <summary>The problem in one line.</summary>
    public override string ToString() => $"{What}: found {Found}; allowed: {Allowed}";

    /// <summary>Throws one exception with all problems; does nothing where there are none.</summary>
    internal static void Throw(IReadOnlyList<SetupProblem> problems, string argument, string head)
    {
        if (problems.Count > 0)
        {
            string rest = problems.Count > Most ? "\n  and more" : "";
            throw new ArgumentException(head + string.Concat(problems.Take(Most).Select(problem => "\n  " + problem)) + rest, argument);
        }
    }
}
