#include "command.h"

static double eighth(int k, int quarter)
{
    return 2 * k <= quarter ? sin(0.5 * M_PI * k / quarter) : cos(0.5 * M_PI * (quarter - k) / quarter);
}

void microsteps_fill(Microsteps *m)
{
    for (int k = 0; k < 4 * MICROSTEPS; k++) {
        int inside = k % MICROSTEPS;
        double s = eighth(inside, MICROSTEPS), c = eighth(MICROSTEPS - inside, MICROSTEPS);
        switch (k / MICROSTEPS) {
        case 0: m->sin[k] = s; m->cos[k] = c; break;
        case 1: m->sin[k] = c; m->cos[k] = -s; break;
        case 2: m->sin[k] = -s; m->cos[k] = -c; break;
        default: m->sin[k] = -c; m->cos[k] = s;
        }
        m->cos_sum[k] = k ? m->cos_sum[k - 1] + m->cos[k - 1] : 0;
        m->sin_sum[k] = k ? m->sin_sum[k - 1] + m->sin[k - 1] : 0;
    }
}

void commander_start(Commander *c, const Axis *a, const Plan *p, const Microsteps *table, double step)
{
    int cursor = 0;
    *c = (Commander){ .plan = p, .table = table, .step = step, .teeth = a->teeth, .fraction = a->fraction, .probe = a->probe,
        .plan_now = plan_position(p, 0, &cursor), .regulator_seconds = a->regulator, .winding_seconds = a->inductance * (1.0 / a->resistance),
        .full = p->mode_full[0], .next = 1, .next_time = p->modes > 1 ? p->mode_time[1] : INFINITY };
    c->regulator = decay_over(step / c->regulator_seconds);
    c->winding = decay_over(step / c->winding_seconds);
}
