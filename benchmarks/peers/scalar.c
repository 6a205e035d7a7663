/* AxisSim's step in plain C, one axis at a time, with nothing in it that the benchmark case does not use. See README.md. */
#include "command.h"
#include "tight.h"
#include "timing.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    double rotor, rotor_speed, rotor_before, axis, axis_speed, axis_before, slip, ia, ib;
} State;

/* Constants of the step, worked out once. */
typedef struct {
    double h, half, teeth, km, detent, inverse_worm, viscous, coulomb, scale, axis_scale;
    double stiffness, damping, half_backlash, driving, back, clutch, axis_viscous, axis_coulomb, conductance, volts, current;
    Decay regulator, winding;
} Constants;

typedef struct { double start, torque, torque_rate, error, error_rate, slope, worm, worm_rate; } Slow;

static inline void phase(Decay regulator, Decay winding, double start, double target, double emf, double conductance, double volts,
    double *restrict end, double *restrict mean)
{
    double e = target + (start - target) * regulator.end, m = target + (start - target) * regulator.mean;
    double high = (volts - emf) * conductance, high_end = high + (start - high) * winding.end;
    double low = (-volts - emf) * conductance, low_end = low + (start - low) * winding.end;
    if (e > high_end) { e = high_end; m = high + (start - high) * winding.mean; }
    else if (e < low_end) { e = low_end; m = low + (start - low) * winding.mean; }
    *end = e;
    *mean = m;
}

static __attribute__((noinline, cold)) double cut(double speed, double after, double push, double positive, double negative, double *overrun)
{
    double rest = push > positive ? push - positive : push < -negative ? push + negative : 0.0;
    *overrun = 0.0;
    if (speed == 0.0) return rest;
    double share = speed / (speed - after), end = (1.0 - share) * rest;
    *overrun = (1.0 - share) * speed + share * end;
    return end;
}

static inline double kick(double speed, double push, double positive, double negative, double *overrun)
{
    double after = speed + push - (speed > 0.0 ? positive : -negative);
    *overrun = 0.0;
    return speed * after > 0.0 ? after : cut(speed, after, push, positive, negative, overrun);
}

static inline double dead_zone(double twist, double half) { return twist > half ? twist - half : twist < -half ? twist + half : 0.0; }

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

static void slow_terms(Slow *restrict b, const State *restrict s, const Axis *restrict a, double start, double block)
{
    double sn, cs, sn2, cs2;
    sine_cosine(s->axis, &sn, &cs);
    sine_cosine(s->axis + block * s->axis_speed, &sn2, &cs2);
    b->start = start;
    b->torque = a->gravity * sn;
    b->torque_rate = (a->gravity * sn2 - b->torque) / block;
    b->worm = s->rotor * (1.0 / a->worm_ratio);
    b->worm_rate = s->rotor_speed * (1.0 / a->worm_ratio);
    sine_cosine(a->wheel_ratio * b->worm, &sn, &cs);
    sine_cosine(a->wheel_ratio * (b->worm + b->worm_rate * block), &sn2, &cs2);
    b->error = a->periodic * sn;
    b->slope = a->periodic * a->wheel_ratio * cs;
    b->error_rate = (a->periodic * sn2 - b->error) / block;
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

static inline void run(State *restrict state, Commander *restrict c, const Axis *restrict a, double until, const Sample *next, Errors *errors)
{
    const Constants k = constants(a, c->step);
    const double h = c->step, block = BLOCK * h;
    State s = *state;
    while (c->index * h < until) {
        Slow b;
        slow_terms(&b, &s, a, c->index * h, block);
        for (int i = 0; i < BLOCK; i++) {
            Command o;
            double start = c->index * h;
            command_next(c, &o);
            step(&s, &k, &b, &o, start);
            if (next && fabs(c->index * h - next->seconds) < 0.5 * h) {
                error_take(errors, next, s.rotor - c->plan_now, s.axis - c->plan_now / 720, s.ia, s.ib);
                next++;
            }
        }
        if (!isfinite(s.rotor + s.axis + s.ia + s.ib) || fabs(c->teeth * (s.rotor - c->plan_now)) > 1.5 * M_PI || s.slip != 0.0) {
            fprintf(stderr, "the run lost sync, its clutch's grip or its numbers by %.6f s\n", c->index * h);
            exit(1);
        }
    }
    *state = s;
}

static void state_line(const char *name, double seconds, const State *s)
{
    printf("{\"state\":\"%s\",\"seconds\":%.17g,\"rotor\":%.17g,\"rotor_speed\":%.17g,\"axis\":%.17g,\"axis_speed\":%.17g,\"ia\":%.17g,\"ib\":%.17g}\n",
        name, seconds, s->rotor, s->rotor_speed, s->axis, s->axis_speed, s->ia, s->ib);
}

/* Errors against the stored samples of a tight run. */
static int errors(const char *which, const char *file)
{
    static Sample tight[MAX_TIGHT + 1];
    static Microsteps table;
    int n = tight_read(file, tight);
    if (n == 0) return 1;
    tight[n].seconds = INFINITY;
    microsteps_fill(&table);
    Axis a = nominal_axis(strcmp(which, "opposing") ? 4.0 : -4.0);
    Plan p = slew_plan(&a, 90 * (M_PI / 180), 3 * (M_PI / 180), 2);
    Commander c;
    commander_start(&c, &a, &p, &table, 50e-6);
    State s = { .ia = a.current };
    Errors e = { 0 };
    run(&s, &c, &a, 35, tight, &e);
    printf("{\"what\":\"step of 50 us\",\"case\":\"%s\",\"axis_arcsec\":%.3g,\"end_arcsec\":%.3g,\"motor_rad\":%.3g,\"current_A\":%.3g}\n",
        which, e.axis, e.end, e.motor, e.current);
    return 0;
}

int main(int argc, char **argv)
{
    if (argc > 3 && !strcmp(argv[1], "errors")) return errors(argv[2], argv[3]);
    int states = argc > 1 && !strcmp(argv[1], "states");
    const double h = 50e-6, samples[] = { 0.5, 2, 8, 16, 28, 31, 32, 35 };
    static Microsteps table;
    microsteps_fill(&table);
    for (int opposing = 0; opposing < 2; opposing++) {
        Axis a = nominal_axis(opposing ? -4.0 : 4.0);
        Plan p = slew_plan(&a, 90 * (M_PI / 180), 3 * (M_PI / 180), 2);
        const char *name = opposing ? "opposing" : "helping";
        Commander c;
        commander_start(&c, &a, &p, &table, h);
        State s = { .ia = a.current };
        double begin = used();
        for (int i = states ? 0 : 7; i < 8; i++) {
            run(&s, &c, &a, samples[i], NULL, NULL);
            if (states) state_line(name, c.index * h, &s);
        }
        if (!states) printf("{\"what\":\"scalar %s\",\"unit\":\"ns/step\",\"value\":%.4f,\"check\":%.17g}\n", name, 1e9 * (used() - begin) / c.index, s.axis);
    }
    return 0;
}
