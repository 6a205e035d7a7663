/* AxisSim's step in plain C, one axis at a time, with nothing in it that the benchmark case does not use: line by line, or REARRANGED. See README.md. */
#include "command.h"
#include "tight.h"
#include "timing.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    double rotor, rotor_speed, rotor_before, axis, axis_speed, axis_before, slip, ia, ib;
} State;

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

static inline double dead_zone(double twist, double half) { return twist > half ? twist - half : twist < -half ? twist + half : 0.0; }

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

#ifdef REARRANGED
#include "step_rearranged.h"
#else
#include "step_plain.h"
#endif

static __attribute__((noinline)) void run(State *restrict state, Commander *restrict c, const Axis *restrict a, double until, const Sample *next, Errors *errors)
{
    const Constants k = constants(a, c->step);
    const double h = c->step, block = BLOCK * h;
    State s = *state;
    while (c->index * h < until) {
        Slow b;
        State begin = in_si(&s, a, h);
        slow_terms(&b, &begin, a, c->index * h, block);
        for (int i = 0; i < BLOCK; i++) {
            Command o;
            double start = c->index * h;
            command_next(c, &o);
            step(&s, &k, &b, &o, start);
            if (next && fabs(c->index * h - next->seconds) < 0.5 * h) {
                State at = in_si(&s, a, h);
                error_take(errors, next, at.rotor - c->plan_now, at.axis - c->plan_now / 720, at.ia, at.ib);
                next++;
            }
        }
        State end = in_si(&s, a, h);
        if (!isfinite(end.rotor + end.axis + end.ia + end.ib) || fabs(c->teeth * (end.rotor - c->plan_now)) > 1.5 * M_PI || end.slip != 0.0) {
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
            State at = in_si(&s, &a, h);
            if (states) state_line(name, c.index * h, &at);
        }
        if (!states) printf("{\"what\":\"scalar %s\",\"unit\":\"ns/step\",\"value\":%.4f,\"check\":%.17g}\n", name, 1e9 * (used() - begin) / c.index, in_si(&s, &a, h).axis);
    }
    return 0;
}
