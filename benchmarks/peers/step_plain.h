/* The step line by line as AxisSim takes it. Included by scalar.c. */
/* Constants of the step, worked out once. */
typedef struct {
    double h, half, teeth, km, detent, inverse_worm, viscous, coulomb, scale, axis_scale;
    double stiffness, damping, half_backlash, driving, back, clutch, axis_viscous, axis_coulomb, conductance, volts, current;
    Decay regulator, winding;
} Constants;

static State in_si(const State *s, const Axis *a, double h) { (void)a; (void)h; return *s; }

static inline double kick(double speed, double push, double positive, double negative, double *overrun)
{
    double after = speed + push - (speed > 0.0 ? positive : -negative);
    *overrun = 0.0;
    return speed * after > 0.0 ? after : cut(speed, after, push, positive, negative, overrun);
}

static __attribute__((noinline, cold)) double slipping(State *s, const Constants *k, double twist, double rate, double mesh)
{
    double limited = copysign(k->clutch, mesh), spring = k->stiffness * dead_zone(twist, k->half_backlash);
    double elastic = k->damping > 0.0 ? (limited - spring) / k->damping : 0.0;
    double slip = fmax(0.0, (rate - elastic) * copysign(1.0, limited)) * k->h;
    double beyond = fmax(0.0, (fabs(spring) - k->clutch) / k->stiffness);
    s->slip += copysign(fmax(slip, beyond), limited);
    return limited;
}

static inline void step(State *restrict s, const Constants *restrict k, const Slow *restrict b, const Command *restrict o, double start)
{
    const double h = k->h, half = k->half, since = start + half - b->start;
    double rotor = s->rotor + half * s->rotor_speed, axis = s->axis + half * s->axis_speed;
    double rotor_speed = 1.5 * s->rotor_speed - 0.5 * s->rotor_before, axis_speed = 1.5 * s->axis_speed - 0.5 * s->axis_before;

    double sn, cs;
    sine_cosine(k->teeth * rotor, &sn, &cs);
    double sweep = k->teeth * rotor_speed * h, smooth = 1.0 - sweep * sweep * (1.0 / 24.0);
    double emf_a = -k->km * rotor_speed * sn * smooth, emf_b = k->km * rotor_speed * cs * smooth;
    double end_a, end_b, mean_a, mean_b;
    if (o->split >= 1.0) {
        phase(k->regulator, k->winding, s->ia, k->current * o->a, emf_a, k->conductance, k->volts, &end_a, &mean_a);
        phase(k->regulator, k->winding, s->ib, k->current * o->b, emf_b, k->conductance, k->volts, &end_b, &mean_b);
    } else {
        double f = o->split, early = -0.5 * (1.0 - f) * sweep, late = 0.5 * f * sweep, m1, m2;
        phase(o->regulator[0], o->winding[0], s->ia, k->current * o->a, emf_a - early * emf_b, k->conductance, k->volts, &end_a, &m1);
        phase(o->regulator[1], o->winding[1], end_a, k->current * o->next_a, emf_a - late * emf_b, k->conductance, k->volts, &end_a, &m2);
        mean_a = f * m1 + (1.0 - f) * m2;
        phase(o->regulator[0], o->winding[0], s->ib, k->current * o->b, emf_b + early * emf_a, k->conductance, k->volts, &end_b, &m1);
        phase(o->regulator[1], o->winding[1], end_b, k->current * o->next_b, emf_b + late * emf_a, k->conductance, k->volts, &end_b, &m2);
        mean_b = f * m1 + (1.0 - f) * m2;
    }
    double change_a = end_a - s->ia, change_b = end_b - s->ib;
    s->ia = end_a;
    s->ib = end_b;
    double torque = k->km * ((mean_b * cs - mean_a * sn) * smooth - sweep * (1.0 / 12.0) * (change_a * cs + change_b * sn));
    torque += -k->detent * 4.0 * sn * cs * (1.0 - 2.0 * sn * sn) * (1.0 - sweep * sweep * (16.0 / 24.0));

    double worm = rotor * k->inverse_worm;
    double error = b->error + b->error_rate * since + b->slope * (worm - b->worm - b->worm_rate * since);
    double geared = k->inverse_worm * (1.0 + b->slope);
    double twist = worm + error - axis - s->slip, rate = rotor_speed * geared - axis_speed;
    double spring = k->stiffness * dead_zone(twist, k->half_backlash), limit = fabs(spring), d = k->damping * rate;
    d = d < -limit ? -limit : d;
    d = d > limit ? limit : d;
    double mesh = spring + d;
    if (__builtin_expect(fabs(mesh) > k->clutch, 0)) mesh = slipping(s, k, twist, rate, mesh);

    double rub = mesh * k->inverse_worm, size = fabs(rub);
    double push = torque - k->viscous * rotor_speed + o->probe - mesh * geared, overrun;
    double positive = (k->coulomb + size * (rub > 0.0 ? k->driving : k->back)) * k->scale;
    double negative = (k->coulomb + size * (rub > 0.0 ? k->back : k->driving)) * k->scale;
    double speed = kick(s->rotor_speed, push * k->scale, positive, negative, &overrun);
    s->rotor = rotor + half * (speed - overrun);
    s->rotor_before = s->rotor_speed;
    s->rotor_speed = speed;

    double shove = (mesh + (b->torque + b->torque_rate * since) - k->axis_viscous * axis_speed) * k->axis_scale, resist = k->axis_coulomb * k->axis_scale;
    overrun = 0.0;
    speed = s->axis_speed == 0.0 && fabs(shove) <= resist ? 0.0 : kick(s->axis_speed, shove, resist, resist, &overrun);
    s->axis = axis + half * (speed - overrun);
    s->axis_before = s->axis_speed;
    s->axis_speed = speed;
}

static Constants constants(const Axis *a, double h)
{
    Constants k = { .h = h, .half = 0.5 * h, .teeth = a->teeth, .km = a->km, .detent = a->detent, .inverse_worm = 1.0 / a->worm_ratio,
        .viscous = a->rotor_viscous, .coulomb = a->rotor_coulomb, .scale = h * (1.0 / a->rotor_inertia), .axis_scale = h * (1.0 / a->axis_inertia),
        .stiffness = a->stiffness, .damping = a->mesh_damping, .half_backlash = a->half_backlash, .driving = a->loss_driving, .back = a->loss_back,
        .clutch = a->clutch, .axis_viscous = a->axis_viscous, .axis_coulomb = a->axis_coulomb, .conductance = 1.0 / a->resistance,
        .volts = a->volts, .current = a->current };
    k.regulator = decay_over(h / a->regulator);
    k.winding = decay_over(h / (a->inductance * k.conductance));
    return k;
}
