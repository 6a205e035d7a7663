/* The step rearranged for the shortest chain of waiting, as the lanes have it: angles in electrical rad and speeds as angles in a step, so that a
   drift is a sum; state half a step ahead; friction the same on both sides, its odd part in the push. Included by scalar.c.
   rotor, axis: angles at the coming mid-step; rotor_before, axis_before: speeds extrapolated to it. */
typedef struct {
    double half, current, conductance, volts, emf, torque, detent, probe, viscous, coulomb, even, odd, load, per_electrical;
    double stiffness, damping, half_backlash, clutch, axis_scale, axis_viscous, axis_coulomb;
    Decay regulator, winding;
} Constants;

static State in_si(const State *s, const Axis *a, double h)
{
    State r = *s;
    r.rotor = (s->rotor - 0.5 * s->rotor_speed) / a->teeth;
    r.rotor_speed = s->rotor_speed / (a->teeth * h);
    r.axis = s->axis - 0.5 * s->axis_speed;
    r.axis_speed = s->axis_speed / h;
    return r;
}

static __attribute__((noinline, cold)) double slipping(State *s, const Constants *k, double twist, double rate, double mesh)
{
    double limited = copysign(k->clutch, mesh), spring = k->stiffness * dead_zone(twist, k->half_backlash);
    double slip = fmax(0.0, (rate - (limited - spring) / k->damping) * copysign(1.0, limited));
    double beyond = fmax(0.0, (fabs(spring) - k->clutch) / k->stiffness);
    s->slip += copysign(fmax(slip, beyond), limited);
    return limited;
}

static inline int opposed(double a, double b) { return (bits_of(a) ^ bits_of(b)) < 0; }

static inline void step(State *restrict s, const Constants *restrict k, const Slow *restrict b, const Command *restrict o, double start)
{
    const double since = start + k->half - b->start, m = s->rotor_before, w = s->rotor_speed, n = s->axis_before, wx = s->axis_speed;
    double sn, cs;
    sine_cosine(s->rotor, &sn, &cs);
    /* Twelve times the mean of a sine over the angle swept, against its middle. */
    double square = m * m, smooth = 12.0 - 0.5 * square, emf = k->emf * (m * smooth), emf_a = -emf * sn, emf_b = emf * cs;
    double end_a, end_b, mean_a, mean_b;
    if (o->split >= 1.0) {
        phase(k->regulator, k->winding, s->ia, k->current * o->a, emf_a, k->conductance, k->volts, &end_a, &mean_a);
        phase(k->regulator, k->winding, s->ib, k->current * o->b, emf_b, k->conductance, k->volts, &end_b, &mean_b);
    } else {
        double f = o->split, early = -0.5 * (1.0 - f) * m, late = 0.5 * f * m, m1, m2;
        phase(o->regulator[0], o->winding[0], s->ia, k->current * o->a, emf_a - early * emf_b, k->conductance, k->volts, &end_a, &m1);
        phase(o->regulator[1], o->winding[1], end_a, k->current * o->next_a, emf_a - late * emf_b, k->conductance, k->volts, &end_a, &m2);
        mean_a = f * m1 + (1.0 - f) * m2;
        phase(o->regulator[0], o->winding[0], s->ib, k->current * o->b, emf_b + early * emf_a, k->conductance, k->volts, &end_b, &m1);
        phase(o->regulator[1], o->winding[1], end_b, k->current * o->next_b, emf_b + late * emf_a, k->conductance, k->volts, &end_b, &m2);
        mean_b = f * m1 + (1.0 - f) * m2;
    }
    double change_a = end_a - s->ia, change_b = end_b - s->ib, twice = sn + sn;
    s->ia = end_a;
    s->ib = end_b;
    double cog = (twice * cs) * (1.0 - twice * sn) * (k->detent * (1.0 - square * (2.0 / 3.0)));

    double geared = k->per_electrical * (1.0 + b->slope), error = b->error - b->slope * b->worm + (b->error_rate - b->slope * b->worm_rate) * since;
    double twist = s->rotor * geared + error - s->axis - s->slip, rate = m * geared - n;
    double spring = k->stiffness * dead_zone(twist, k->half_backlash), limit = fabs(spring), d = k->damping * rate;
    d = d < -limit ? -limit : d;
    d = d > limit ? limit : d;
    double mesh = spring + d;
    if (__builtin_expect(fabs(mesh) > k->clutch, 0)) mesh = slipping(s, k, twist, rate, mesh);

    /* All but the currents' torque, which comes last, first. */
    double resist = k->coulomb + fabs(mesh) * k->even, rubs = copysign(resist, w);
    double other = cog + o->probe * k->probe - k->viscous * m - mesh * (geared * k->load + k->odd) - rubs;
    double pull = (mean_b * cs - mean_a * sn) * smooth - m * (change_a * cs + change_b * sn);
    double gain = k->torque * pull + other, after = w + gain, angle = s->rotor + after, next = after + 0.5 * gain, overrun;
    double shove = (mesh + (b->torque + b->torque_rate * since) - k->axis_viscous * n) * k->axis_scale;
    double axis_gain = shove - copysign(k->axis_coulomb, wx), axis_after = wx + axis_gain, axis_angle = s->axis + axis_after, axis_next = axis_after + 0.5 * axis_gain;
    if (__builtin_expect(opposed(w, after), 0)) {
        after = cut(w, after, gain + rubs, resist, resist, &overrun);
        angle = s->rotor + after - 0.5 * overrun;
        next = after + 0.5 * (after - w);
    }
    if (__builtin_expect(opposed(wx, axis_after), 0)) {
        axis_after = cut(wx, axis_after, shove, k->axis_coulomb, k->axis_coulomb, &overrun);
        axis_angle = s->axis + axis_after - 0.5 * overrun;
        axis_next = axis_after + 0.5 * (axis_after - wx);
    }
    s->rotor = angle;
    s->rotor_speed = after;
    s->rotor_before = next;
    s->axis = axis_angle;
    s->axis_speed = axis_after;
    s->axis_before = axis_next;
}

static Constants constants(const Axis *a, double h)
{
    double scale = h / a->rotor_inertia * a->teeth * h, per_speed = 1.0 / (a->teeth * h), axis_scale = h * h / a->axis_inertia;
    Constants k = { .half = 0.5 * h, .current = a->current, .conductance = 1.0 / a->resistance, .volts = a->volts, .emf = a->km * per_speed / 12,
        .torque = a->km * scale / 12, .detent = -2.0 * a->detent * scale, .probe = scale, .viscous = a->rotor_viscous * scale * per_speed,
        .coulomb = a->rotor_coulomb * scale, .even = 0.5 * (a->loss_driving + a->loss_back) / a->worm_ratio * scale,
        .odd = 0.5 * (a->loss_driving - a->loss_back) / a->worm_ratio * scale, .load = a->teeth * scale, .per_electrical = 1.0 / (a->worm_ratio * a->teeth),
        .stiffness = a->stiffness, .damping = a->mesh_damping / h, .half_backlash = a->half_backlash, .clutch = a->clutch, .axis_scale = axis_scale,
        .axis_viscous = a->axis_viscous / h, .axis_coulomb = a->axis_coulomb * axis_scale };
    k.regulator = decay_over(h / a->regulator);
    k.winding = decay_over(h / (a->inductance * k.conductance));
    return k;
}
