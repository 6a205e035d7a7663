namespace AxisSim.Core.Payloads;

/// <summary>First moments of mass about the origin of the tube frame, kg m: each is mass times the centre's coordinate, summed.</summary>
/// <param name="Out">Along the declination axis; the counterweight counts negative. It alone unbalances the polar axis at any declination.</param>
/// <param name="Forward">Along the optical axis.</param>
/// <param name="Side">Across both.</param>
internal readonly record struct FirstMoments(double Out, double Forward, double Side)
{
    /// <summary>Moments of a whole payload with its counterweight and bar.</summary>
    public static FirstMoments Of(PayloadModel payload)
    {
        double o = payload.Bodies.Sum(body => body.MassKilograms * body.OutMetres);
        double f = payload.Bodies.Sum(body => body.MassKilograms * body.ForwardMetres);
        double s = payload.Bodies.Sum(body => body.MassKilograms * body.SideMetres);
        if (payload.Counterweight is { } weight)
        {
            o -= (weight.MassKilograms * weight.DistanceMetres) + (weight.BarMassKilograms * weight.BarLengthMetres / 2.0);
        }

        return new(o, f, s);
    }
}
