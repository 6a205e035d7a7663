using AxisSim.Core.Bounds;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of what turns: the right number of terms, finite, and an inertia about each axis that is there.</summary>
internal static class LoadChecks
{
    private const int PolarGravityTerms = 6, DeclinationGravityTerms = 6, PolarInertiaTerms = 5;

    /// <summary>How far an inertia of a thin body, that is zero at one angle, may fall below zero by rounding, over its mean.</summary>
    private const double Rounding = 1e-12;

    public static void Check(ProblemCollector found, MountSetup setup, MoveSettings? move)
    {
        MountLoad load = setup.Load;
        found.At(nameof(MountSetup.Load));
        Terms(found, load.PolarGravity, PolarGravityTerms, nameof(load.PolarGravity));
        Terms(found, load.DeclinationGravity, DeclinationGravityTerms, nameof(load.DeclinationGravity));
        bool polar = Terms(found, load.PolarInertia, PolarInertiaTerms, nameof(load.PolarInertia));
        if (setup.Declination is not null)
        {
            Inertia(found, load.DeclinationInertiaKilogramSquareMetres, nameof(load.DeclinationInertiaKilogramSquareMetres), "the declination axis");
        }

        if (setup.Polar is null || !polar || move is null)
        {
            return;
        }

        IReadOnlyList<double> j = load.PolarInertia;
        double swing = Math.Sqrt((j[1] * j[1]) + (j[2] * j[2])) + Math.Sqrt((j[3] * j[3]) + (j[4] * j[4]));
        if (j[0] - swing < -Rounding * j[0])
        {
            found.Add(nameof(load.PolarInertia), $"terms that may go below zero ({ProblemCollector.Text(j[0])} less {ProblemCollector.Text(swing)} kg m2)", "an inertia that is not below zero at any declination");
            return;
        }

        Inertia(found, Math.Min(load.Inertia(MountAxis.Polar, move.Start.DeclinationRadians), load.Inertia(MountAxis.Polar, move.End.DeclinationRadians)), nameof(load.PolarInertia), "the polar axis at the start and the end of the move");
    }

    private static void Inertia(ProblemCollector found, double inertia, string property, string about)
    {
        if (!(inertia > 0.0 && double.IsFinite(inertia)))
        {
            found.Add(property, $"{ProblemCollector.Text(inertia)} kg m2 about {about}", "an inertia above zero about each axis that is simulated");
        }
    }

    private static bool Terms(ProblemCollector found, IReadOnlyList<double>? terms, int count, string property)
    {
        if (!found.Has(terms, property))
        {
            return false;
        }

        if (terms!.Count != count)
        {
            found.Add(property, $"{ProblemCollector.Text(terms.Count)} terms", $"{ProblemCollector.Text(count)} terms");
            return false;
        }

        for (int i = 0; i < count; i++)
        {
            if (!double.IsFinite(terms[i]))
            {
                found.Add(property, $"{ProblemCollector.Text(terms[i])} among its terms", "finite numbers");
                return false;
            }
        }

        return true;
    }
}
