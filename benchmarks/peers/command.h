/* What the drive commands over a step, in units of the slew current, for all lanes that share a plan: a quantised sine, or full steps with
   the step split exactly at an edge or at a change of mode. */
#ifndef PEERS_COMMAND_H
#define PEERS_COMMAND_H
#include "case.h"
#include "numbers.h"
#include <math.h>

typedef struct { double end, mean; } Decay;                        /* exp(-x), and its mean over the interval */

typedef struct {
    double a, b, split, next_a, next_b;                            /* split: end of the first part as a share of the step; 1 when whole */
    Decay regulator[2], winding[2];                                /* of both parts, set where the step is split */
    double probe;                                                  /* mean pulse torque, N m */
} Command;

typedef struct {
    double cos[4 * MICROSTEPS], sin[4 * MICROSTEPS], cos_sum[4 * MICROSTEPS], sin_sum[4 * MICROSTEPS];
} Microsteps;

typedef struct {
    const Plan *plan;
    const Microsteps *table;
    double step, teeth, fraction, probe, plan_now, next_time;
    double regulator_seconds, winding_seconds;
    Decay regulator, winding;
    long index;
    int cursor, full, next;
} Commander;

void microsteps_fill(Microsteps *m);
void commander_start(Commander *c, const Axis *a, const Plan *p, const Microsteps *table, double step);

static inline double mean_of(double end, double x) { return x < 1e-5 ? 1.0 - 0.5 * x + x * x / 6.0 : (1.0 - end) / x; }
static inline Decay decay_over(double x) { double end = decay_of(x); return (Decay){ end, mean_of(end, x) }; }
/* The rest of an interval after a first part: its decay is the quotient. */
static inline Decay decay_rest(Decay whole, Decay first, double x)
{
    if (__builtin_expect(whole.end < 1e-250, 0)) return decay_over(x);
    double end = whole.end / first.end;
    return (Decay){ end, mean_of(end, x) };
}

static inline void microsteps_mean(const Microsteps *restrict m, double from_radians, double to_radians, double *restrict c, double *restrict s)
{
    const int mask = 4 * MICROSTEPS - 1;
    const double cells = 4 * MICROSTEPS / (2.0 * M_PI);
    double from = from_radians * cells + 0.5, to = to_radians * cells + 0.5, from_cell = floor(from), to_cell = floor(to);
    int i = (int)((long)from_cell & mask);
    if (from_cell == to_cell) { *c = m->cos[i]; *s = m->sin[i]; return; }
    int j = (int)((long)to_cell & mask);
    double r = from - from_cell, q = to - to_cell;
    if (fabs(to_cell - from_cell) == 1.0) {
        double first = to_cell > from_cell ? 1.0 - r : r, second = to_cell > from_cell ? q : 1.0 - q, whole = 1.0 / (first + second);
        *c = (first * m->cos[i] + second * m->cos[j]) * whole;
        *s = (first * m->sin[i] + second * m->sin[j]) * whole;
        return;
    }
    double scale = 1.0 / (to - from);
    *c = (m->cos_sum[j] - m->cos_sum[i] + q * m->cos[j] - r * m->cos[i]) * scale;
    *s = (m->sin_sum[j] - m->sin_sum[i] + q * m->sin[j] - r * m->sin[i]) * scale;
}

static inline void quarter_signs(double quarter, double *a, double *b)
{
    int q = (int)((long)quarter & 3);
    *a = q == 0 || q == 3 ? 1.0 : -1.0;
    *b = q < 2 ? 1.0 : -1.0;
}

static inline void command_part(const Commander *c, double from, double to, double *a, double *b)
{
    if (!c->full) { microsteps_mean(c->table, from, to, a, b); return; }
    quarter_signs(floor(0.5 * (from + to) * QUARTER_TURNS_PER_RADIAN), a, b);
    *a *= c->fraction;
    *b *= c->fraction;
}

/* Impulse of unit pulses of 1 ms every 20 ms with alternating sign, s. */
static inline double pulse_impulse(double seconds)
{
    double index = floor(seconds / 0.020), inside = least(seconds - index * 0.020, 0.001);
    return (long)index & 1 ? 0.001 - inside : inside;
}

static inline void command_next(Commander *restrict c, Command *restrict o)
{
    const double quarter = 0.5 * M_PI;
    double h = c->step, start = c->index * h;
    c->index++;
    double plan_end = plan_position(c->plan, c->index * h, &c->cursor);
    double from = c->teeth * c->plan_now, to = c->teeth * plan_end;
    c->plan_now = plan_end;
    o->split = 1.0;
    o->probe = c->probe == 0.0 || start >= c->plan->slew_seconds ? 0.0 : c->probe * (pulse_impulse(start + h) - pulse_impulse(start)) / h;
    if (__builtin_expect(c->next_time < start + h, 0)) {
        o->split = most(0.0, (c->next_time - start) / h);
        double mid = from + o->split * (to - from);
        command_part(c, from, mid, &o->a, &o->b);
        while (c->next_time < start + h) {
            c->full = c->plan->mode_full[c->next];
            c->next++;
            c->next_time = c->next < c->plan->modes ? c->plan->mode_time[c->next] : INFINITY;
        }
        command_part(c, mid, to, &o->next_a, &o->next_b);
    } else if (!c->full) {
        microsteps_mean(c->table, from, to, &o->a, &o->b);
    } else {
        double first = floor(from * QUARTER_TURNS_PER_RADIAN), last = floor(to * QUARTER_TURNS_PER_RADIAN);
        quarter_signs(first, &o->a, &o->b);
        o->a *= c->fraction;
        o->b *= c->fraction;
        if (first != last) {
            o->split = (most(first, last) * quarter - from) / (to - from);
            quarter_signs(last, &o->next_a, &o->next_b);
            o->next_a *= c->fraction;
            o->next_b *= c->fraction;
        }
    }
    if (o->split < 1.0) {
        double f = o->split, rest = (1.0 - f) * h;
        o->regulator[0] = decay_over(f * h / c->regulator_seconds);
        o->winding[0] = decay_over(f * h / c->winding_seconds);
        o->regulator[1] = decay_rest(c->regulator, o->regulator[0], rest / c->regulator_seconds);
        o->winding[1] = decay_rest(c->winding, o->winding[0], rest / c->winding_seconds);
    }
}
#endif
