using AxisSim.Core.Bounds;

namespace AxisSim.Core.Payloads;

/// <summary>Whether bodies, a counterweight and lumped loads are such as can be: the same rules that a scenario file is held to.</summary>
public static class PayloadChecks
{
    /// <summary>All problems of bodies and counterweight; empty when there are none.</summary>
    public static IReadOnlyList<SetupProblem> Problems(PayloadModel payload)
    {
        ArgumentNullException.ThrowIfNull(payload);
        var found = new ProblemCollector();
        found.At("");
        for (int i = 0; found.Has(payload.Bodies) && i < payload.Bodies.Count; i++)
        {
            found.At("", nameof(PayloadModel.Bodies), i);
            if (found.Has(payload.Bodies[i], ""))
            {
                Body(found, payload.Bodies[i]);
            }
        }

        if (payload.Counterweight is { } weight)
        {
            Weight(found, weight);
        }

        return found.Problems;
    }

    /// <summary>All problems of a lumped load; empty when there are none.</summary>
    public static IReadOnlyList<SetupProblem> Problems(LumpedLoad load)
    {
        ArgumentNullException.ThrowIfNull(load);
        var found = new ProblemCollector();
        found.At(nameof(LumpedLoad));
        found.Check(load.InertiaKilogramSquareMetres, PayloadBounds.LumpedInertia);
        found.Check(load.ImbalanceNewtonMetres, PayloadBounds.LumpedImbalance);
        found.Check(load.PhaseRadians, PayloadBounds.LumpedPhase);
        return found.Problems;
    }

    private static void Body(ProblemCollector found, PayloadBody body)
    {
        found.CheckWord(body.Shape);
        found.CheckWord(body.Direction);
        found.Check(body.MassKilograms, PayloadBounds.Mass);
        found.Check(body.OutMetres, PayloadBounds.Out);
        found.Check(body.ForwardMetres, PayloadBounds.Offset);
        found.Check(body.SideMetres, PayloadBounds.Offset);
        if (body.Shape != BodyShape.Point)
        {
            found.Check(body.LengthMetres, PayloadBounds.Length);
        }

        if (body.Shape is BodyShape.Tube or BodyShape.Cylinder)
        {
            found.Check(body.DiameterMetres, PayloadBounds.Across);
        }

        if (body.Shape == BodyShape.Box)
        {
            found.Check(body.WidthMetres, PayloadBounds.Across);
            found.Check(body.HeightMetres, PayloadBounds.Across);
        }

        if (body.Shape == BodyShape.Tube)
        {
            found.Check(body.InnerDiameterMetres, PayloadBounds.InnerDiameter);
            if (body.InnerDiameterMetres >= body.DiameterMetres)
            {
                found.Add(nameof(body.InnerDiameterMetres), $"{ProblemCollector.Text(body.InnerDiameterMetres)} (not below the outer diameter)", $"an inner diameter below {ProblemCollector.Text(body.DiameterMetres)} m");
            }
        }
    }

    private static void Weight(ProblemCollector found, Counterweight weight)
    {
        found.At(nameof(PayloadModel.Counterweight));
        if (weight.MassKilograms != 0.0)
        {
            found.Check(weight.MassKilograms, PayloadBounds.Mass);
        }

        found.Check(weight.DistanceMetres, PayloadBounds.Distance);
        found.CheckGiven(weight.GreatestDistanceMetres, PayloadBounds.Distance);
        found.Check(weight.DiameterMetres, PayloadBounds.WeightSize);
        found.Check(weight.LengthMetres, PayloadBounds.WeightSize);
        found.Check(weight.BarMassKilograms, PayloadBounds.BarMass);
        found.Check(weight.BarLengthMetres, PayloadBounds.BarLength);
        if (weight.GreatestDistanceMetres < weight.DistanceMetres)
        {
            found.Add(nameof(weight.GreatestDistanceMetres), $"{ProblemCollector.Text(weight.GreatestDistanceMetres.Value)} (below the distance)", $"at least the distance of {ProblemCollector.Text(weight.DistanceMetres)} m");
        }
    }
}
