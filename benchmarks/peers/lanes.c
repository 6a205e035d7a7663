#include "lanes.h"
#include <stdlib.h>
#include <string.h>

static void *aligned(size_t bytes) { void *p = aligned_alloc(64, (bytes + 63) / 64 * 64); if (!p) abort(); return memset(p, 0, bytes); }

Team *team_create(const Axis *a, double h, int vectors)
{
    Team *t = aligned(sizeof *t);
    t->vectors = t->capacity = vectors;
    t->shared = (Shared){ .h = h, .teeth = a->teeth, .inverse_worm = 1.0 / a->worm_ratio, .wheel = a->wheel_ratio,
        .inverse_rotor_inertia = 1.0 / a->rotor_inertia, .conductance = 1.0 / a->resistance, .volts = a->volts };
    t->shared.push_scale = h * t->shared.inverse_rotor_inertia * a->teeth * h;
    t->shared.regulator = decay_over(h / a->regulator);
    t->shared.winding = decay_over(h / (a->inductance * t->shared.conductance));
    t->state = aligned(vectors * sizeof *t->state);
    t->before = aligned(vectors * sizeof *t->before);
    t->constants = aligned(vectors * sizeof *t->constants);
    t->slow = aligned(vectors * sizeof *t->slow);
    for (int lane = 0; lane < vectors * WIDTH; lane++) team_set(t, lane, a);
    return t;
}

void team_free(Team *t)
{
    free(t->state); free(t->before); free(t->constants); free(t->slow);
    free(t);
}

void team_set(Team *t, int lane, const Axis *a)
{
    const Shared *s = &t->shared;
    int v = lane / WIDTH, i = lane % WIDTH;
    double scale = s->h * s->inverse_rotor_inertia * s->teeth * s->h, per_speed = 1 / (s->teeth * s->h);
    LaneConstants *k = &t->constants[v];
    k->current[i] = a->current;
    k->emf[i] = a->km * s->conductance * per_speed / 12;
    k->torque[i] = a->km * scale / 12;
    k->detent[i] = -2 * a->detent * scale;
    k->viscous[i] = a->rotor_viscous * scale * per_speed;
    k->coulomb[i] = a->rotor_coulomb * scale;
    k->even[i] = 0.5 * (a->loss_driving + a->loss_back) * s->inverse_worm * scale;
    k->odd[i] = 0.5 * (a->loss_driving - a->loss_back) * s->inverse_worm * scale;
    k->load[i] = s->teeth * scale;
    k->stiffness[i] = a->stiffness;
    k->damping[i] = a->mesh_damping / s->h;
    k->half_backlash[i] = a->half_backlash;
    k->clutch[i] = a->clutch;
    k->axis_scale[i] = s->h * s->h / a->axis_inertia;
    k->axis_viscous[i] = a->axis_viscous / s->h;
    k->axis_coulomb[i] = a->axis_coulomb * k->axis_scale[i];
    k->gravity[i] = a->gravity;
    k->periodic[i] = a->periodic;
    for (size_t j = 0; j < sizeof(LaneState) / sizeof(vd); j++) ((vd *)&t->state[v])[j][i] = 0;
    t->state[v].ia[i] = a->current;
}

LaneView team_view(const Team *t, int lane)
{
    const LaneState *s = &t->state[lane / WIDTH];
    const double h = t->shared.h, teeth = t->shared.teeth;
    int i = lane % WIDTH;
    return (LaneView){ (s->rotor[i] - 0.5 * s->rotor_speed[i]) / teeth, s->rotor_speed[i] / (teeth * h), s->axis[i] - 0.5 * s->axis_speed[i],
        s->axis_speed[i] / h, s->ia[i], s->ib[i], s->slip[i] };
}

void team_move(Team *t, int to, int from)
{
    for (size_t j = 0; j < sizeof(LaneState) / sizeof(vd); j++)
        ((vd *)&t->state[to / WIDTH])[j][to % WIDTH] = ((vd *)&t->state[from / WIDTH])[j][from % WIDTH];
    for (size_t j = 0; j < sizeof(LaneConstants) / sizeof(vd); j++)
        ((vd *)&t->constants[to / WIDTH])[j][to % WIDTH] = ((vd *)&t->constants[from / WIDTH])[j][from % WIDTH];
}

/* Gravity and periodic error at both ends of the block. The second end is near the first, so its sine follows by a short series. */
static void slow_terms(Team *t, int v)
{
    const Shared *k = &t->shared;
    const LaneState *s = &t->state[v];
    const LaneConstants *c = &t->constants[v];
    LaneSlow *o = &t->slow[v];
    vd sn, cs, axis = nmad(all(0.5), s->axis_speed, s->axis), rotor = nmad(all(0.5), s->rotor_speed, s->rotor);
    sine_cosine_v(axis, &sn, &cs);
    vd d = all(BLOCK) * s->axis_speed, z = d * d;
    vd rise = mad(cs, nmad(d * z, all(1.0 / 6), d), sn * z * mad(z, all(1.0 / 24), all(-0.5)));
    o->gravity_step = c->gravity * rise * all(1.0 / BLOCK);
    o->gravity = mad(o->gravity_step, all(0.5), c->gravity * sn);
    const double per_electrical = k->inverse_worm / k->teeth;
    vd wheel = all(k->wheel), worm = rotor * all(per_electrical), worm_step = s->rotor_speed * all(per_electrical);
    sine_cosine_v(wheel * worm, &sn, &cs);
    d = wheel * worm_step * all(BLOCK);
    z = d * d;
    vd sine = d * mad(z, mad(z, all(1.0 / 120), all(-1.0 / 6)), all(1)), cosine = z * mad(z, mad(z, all(-1.0 / 720), all(1.0 / 24)), all(-0.5));
    rise = mad(cs, sine, sn * cosine);
    vd slope = c->periodic * wheel * cs;
    o->error_step = msub(c->periodic * rise, all(1.0 / BLOCK), slope * worm_step);
    o->error = mad(o->error_step, all(0.5), c->periodic * sn - slope * worm - s->slip);
    o->geared = mad(all(per_electrical), slope, all(per_electrical));
    o->load = mad(o->geared, c->load, c->odd);
}

/* Where a speed passes zero the step is cut there; friction is the same on both sides, for its odd part is in the push. */
static __attribute__((noinline)) vd cut(vd speed, vd after, vd push, vd resist, vd mid, mask where, vd *angle, vd *next)
{
    vd rest = push - within(push, resist);
    mask moving = differs(speed, all(0));
    vd share = pick(moving, speed / pick(moving, speed - after, all(1)), all(0));
    vd left = all(1) - share, end = left * rest, overrun = pick(moving, mad(left, speed, share * end), all(0));
    *angle = pick(where, nmad(all(0.5), overrun, mid + end), *angle);
    *next = pick(where, mad(all(0.5), end - speed, end), *next);
    return pick(where, end, after);
}

/* The clutch passes its slip torque; the twist beyond what that holds flows into the slip. */
static __attribute__((noinline)) vd slipping(LaneState *s, const LaneConstants *c, vd twist, vd rate, vd mesh)
{
    mask where = above(size_of(mesh), c->clutch);
    vd zero = all(0), limited = with_sign(c->clutch, mesh), spring = c->stiffness * (twist - within(twist, c->half_backlash));
    vd slip = (rate - (limited - spring) / c->damping) * with_sign(all(1), limited);
    vd beyond = (size_of(spring) - c->clutch) / c->stiffness;
    slip = pick(above(slip, zero), slip, zero);
    slip = pick(above(beyond, slip), beyond, slip);
    s->slip = pick(where, s->slip + with_sign(slip, limited), s->slip);
    return pick(where, limited, mesh);
}

#ifndef TOGETHER
#define TOGETHER 2
#endif
/* Vectors in one pass of the inner loop. */
enum { MOST = TOGETHER };
#define EACH _Pragma("GCC unroll 8") for (int v = 0; v < count; v++)


/* One phase of several vectors: regulated, held to what full voltage allows. emf: what the back-EMF alone would drive by the end of the step.
   Written a line at a time over the vectors, so that their chains of waiting lie side by side in the code. */
INLINE void phases(const vd *restrict start, const vd *restrict target, Decay regulator, Decay winding, const vd *restrict emf, double share,
    double limit, double mean_limit, vd *restrict end, vd *restrict mean, const int count)
{
    vd off[MOST], base[MOST], reach[MOST], held[MOST], low[MOST], plain[MOST];
    EACH off[v] = start[v] - target[v];
    EACH base[v] = mad(all(winding.end), start[v], emf[v]);
    EACH reach[v] = mad(off[v], all(regulator.end), target[v]) - base[v];
    EACH low[v] = mad(all(share), emf[v], all(winding.mean) * start[v]);
    EACH held[v] = within(reach[v], all(limit));
    EACH plain[v] = mad(off[v], all(regulator.mean), target[v]);
    EACH end[v] = base[v] + held[v];
    EACH mean[v] = pick(differs(reach[v], held[v]), low[v] + with_sign(all(mean_limit), reach[v]), plain[v]);
}

INLINE void sines(const vd *restrict x, vd *restrict sine, vd *restrict cosine, const int count)
{
    vd shifted[MOST], r[MOST], z[MOST], zz[MOST], s[MOST], c[MOST], t[MOST], u[MOST];
    EACH shifted[v] = mad(x[v], all(QUARTER_TURNS_PER_RADIAN), all(ROUNDER));
    EACH t[v] = shifted[v] - all(ROUNDER);
    EACH r[v] = nmad(t[v], all(QUARTER_TURN_HIGH), x[v]);
    EACH r[v] = nmad(t[v], all(QUARTER_TURN_LOW), r[v]);
    EACH z[v] = r[v] * r[v];
    EACH s[v] = mad(z[v], all(1.58969099521155010221e-10), all(-2.50507602534068634195e-08));
    EACH t[v] = mad(z[v], all(2.75573137070700676789e-06), all(-1.98412698298579493134e-04));
    EACH c[v] = mad(z[v], all(-1.13596475577881948265e-11), all(2.08757232129817482790e-09));
    EACH u[v] = mad(z[v], all(-2.75573143513906633035e-07), all(2.48015872894767294178e-05));
    EACH zz[v] = z[v] * z[v];
    EACH s[v] = mad(zz[v], s[v], t[v]);
    EACH c[v] = mad(zz[v], c[v], u[v]);
    EACH t[v] = mad(z[v], all(8.33333333332248946124e-03), all(-1.66666666666666324348e-01));
    EACH u[v] = mad(z[v], all(-1.38888888888741095749e-03), all(4.16666666666666019037e-02));
    EACH s[v] = mad(zz[v], s[v], t[v]);
    EACH c[v] = mad(zz[v], c[v], u[v]);
    EACH t[v] = r[v] * z[v];
    EACH u[v] = nmad(z[v], all(0.5), all(1.0));
    EACH s[v] = mad(t[v], s[v], r[v]);
    EACH c[v] = mad(zz[v], c[v], u[v]);
    EACH turned(s[v], c[v], shifted[v], &sine[v], &cosine[v]);
}

/* One step of a few vectors of lanes. split, clutch and count are known where it is compiled. */
INLINE void step(const Shared *restrict k, const Command *restrict o, double number, LaneState *restrict s, const LaneConstants *restrict c,
    const LaneSlow *restrict b, vd *restrict greatest, const int split, const int clutch, const int count)
{
    vd x[MOST], sn[MOST], cs[MOST], smooth[MOST], square[MOST], push[MOST], mesh[MOST], m[MOST];
    EACH x[v] = s[v].rotor;
    sines(x, sn, cs, count);
    /* Twelve times the mean of a sine over the angle swept, against its middle. */
    EACH m[v] = s[v].rotor_mid;
    EACH square[v] = m[v] * m[v];
    EACH smooth[v] = nmad(square[v], all(0.5), all(12));
    vd start_a[MOST], start_b[MOST], a[MOST], d[MOST], mean_a[MOST], mean_b[MOST], ea[MOST], eb[MOST], emf[MOST];
    EACH emf[v] = c[v].emf * (m[v] * smooth[v]);
    EACH start_a[v] = s[v].ia;
    EACH start_b[v] = s[v].ib;
    EACH a[v] = c[v].current * all(o->a);
    EACH d[v] = c[v].current * all(o->b);
    const double top = k->volts * k->conductance;
    if (!split) {
        const Decay r = k->regulator, w = k->winding;
        const double end = 1 - w.end, mean = 1 - w.mean, share = mean / end;
        EACH emf[v] = emf[v] * all(end);
        EACH ea[v] = emf[v] * sn[v];
        EACH eb[v] = -emf[v] * cs[v];
        vd end_a[MOST], end_b[MOST];
        phases(start_a, a, r, w, ea, share, top * end, top * mean, end_a, mean_a, count);
        phases(start_b, d, r, w, eb, share, top * end, top * mean, end_b, mean_b, count);
        EACH a[v] = end_a[v];
        EACH d[v] = end_b[v];
    } else {
        const double f = o->split, g = 1 - f;
        const Decay w1 = o->winding[0], w2 = o->winding[1];
        const double end1 = 1 - w1.end, mean1 = 1 - w1.mean, end2 = 1 - w2.end, mean2 = 1 - w2.mean;
        vd early[MOST], late[MOST], e[MOST], p[MOST], q[MOST], first[MOST], then[MOST];
        EACH early[v] = m[v] * all(-0.5 * g);
        EACH late[v] = m[v] * all(0.5 * f);
        EACH ea[v] = emf[v] * sn[v];
        EACH eb[v] = emf[v] * cs[v];
        EACH e[v] = mad(early[v], eb[v], ea[v]) * all(end1);
        phases(start_a, a, o->regulator[0], w1, e, mean1 / end1, top * end1, top * mean1, p, first, count);
        EACH q[v] = c[v].current * all(o->next_a);
        EACH e[v] = mad(late[v], eb[v], ea[v]) * all(end2);
        phases(p, q, o->regulator[1], w2, e, mean2 / end2, top * end2, top * mean2, a, then, count);
        EACH mean_a[v] = mad(all(f), first[v], all(g) * then[v]);
        EACH e[v] = msub(early[v], ea[v], eb[v]) * all(end1);
        phases(start_b, d, o->regulator[0], w1, e, mean1 / end1, top * end1, top * mean1, p, first, count);
        EACH q[v] = c[v].current * all(o->next_b);
        EACH e[v] = msub(late[v], ea[v], eb[v]) * all(end2);
        phases(p, q, o->regulator[1], w2, e, mean2 / end2, top * end2, top * mean2, d, then, count);
        EACH mean_b[v] = mad(all(f), first[v], all(g) * then[v]);
    }
    vd lean[MOST], pull[MOST], twice[MOST], cog[MOST], gap[MOST], rate[MOST];
    EACH s[v].ia = a[v];
    EACH s[v].ib = d[v];
    EACH gap[v] = mad(s[v].rotor, b[v].geared, mad(b[v].error_step, all(number), b[v].error)) - s[v].axis;
    EACH rate[v] = msub(m[v], b[v].geared, s[v].axis_mid);
    EACH lean[v] = (d[v] - start_b[v]) * sn[v];
    EACH pull[v] = mean_a[v] * sn[v];
    EACH twice[v] = sn[v] + sn[v];
    EACH lean[v] = mad(a[v] - start_a[v], cs[v], lean[v]);
    EACH pull[v] = msub(mean_b[v], cs[v], pull[v]);
    EACH cog[v] = (twice[v] * cs[v]) * nmad(twice[v], sn[v], all(1));
    EACH push[v] = nmad(c[v].viscous, m[v], all(o->probe * k->push_scale));
    EACH pull[v] = nmad(m[v], lean[v], pull[v] * smooth[v]);
    EACH if (clutch) gap[v] = gap[v] - s[v].slip;
    EACH twice[v] = gap[v] - within(gap[v], c[v].half_backlash);
    EACH push[v] = mad(cog[v], c[v].detent * nmad(square[v], all(2.0 / 3), all(1)), push[v]);
    EACH twice[v] = c[v].stiffness * twice[v];
    EACH push[v] = mad(c[v].torque, pull[v], push[v]);
    EACH mesh[v] = twice[v] + within(c[v].damping * rate[v], twice[v]);
    EACH {
        if (!clutch) greatest[v] = larger(greatest[v], mesh[v]);
        else if (any(above(size_of(mesh[v]), c[v].clutch))) mesh[v] = slipping(&s[v], &c[v], gap[v], rate[v], mesh[v]);
    }
    vd resist[MOST], gain[MOST], after[MOST], angle[MOST], next[MOST], shove[MOST], axis_gain[MOST], axis_after[MOST], axis_angle[MOST], axis_next[MOST];
    EACH resist[v] = mad(size_of(mesh[v]), c[v].even, c[v].coulomb);
    EACH push[v] = nmad(mesh[v], b[v].load, push[v]);
    EACH shove[v] = nmad(c[v].axis_viscous, s[v].axis_mid, mesh[v] + mad(b[v].gravity_step, all(number), b[v].gravity));
    EACH gain[v] = push[v] - with_sign(resist[v], s[v].rotor_speed);
    EACH axis_gain[v] = msub(c[v].axis_scale, shove[v], with_sign(c[v].axis_coulomb, s[v].axis_speed));
    EACH after[v] = s[v].rotor_speed + gain[v];
    EACH axis_after[v] = s[v].axis_speed + axis_gain[v];
    EACH angle[v] = s[v].rotor + after[v];
    EACH next[v] = mad(all(0.5), gain[v], after[v]);
    EACH axis_angle[v] = s[v].axis + axis_after[v];
    EACH axis_next[v] = mad(all(0.5), axis_gain[v], axis_after[v]);
    EACH if (__builtin_expect(any_opposed(s[v].rotor_speed, after[v], s[v].axis_speed, axis_after[v]), 0)) {
        vd w = s[v].rotor_speed, y = s[v].axis_speed;
        mask stops = opposed(w, after[v]), axis_stops = opposed(y, axis_after[v]);
        if (any(stops)) after[v] = cut(w, after[v], push[v], resist[v], s[v].rotor, stops, &angle[v], &next[v]);
        if (any(axis_stops)) axis_after[v] = cut(y, axis_after[v], c[v].axis_scale * shove[v], c[v].axis_coulomb, s[v].axis, axis_stops, &axis_angle[v], &axis_next[v]);
    }
    EACH s[v].rotor = angle[v];
    EACH s[v].rotor_speed = after[v];
    EACH s[v].rotor_mid = next[v];
    EACH s[v].axis = axis_angle[v];
    EACH s[v].axis_speed = axis_after[v];
    EACH s[v].axis_mid = axis_next[v];
}

/* The block again for one vector, now with a clutch that slips. */
static __attribute__((noinline)) void block_slipping(Team *t, int v)
{
    vd none;
    t->state[v] = t->before[v];
    t->slow[v].error = t->slow[v].error + t->state[v].slip;
    for (int i = 0; i < BLOCK; i++) {
        const Command *o = &t->command[i];
        if (o->split < 1.0) step(&t->shared, o, i, &t->state[v], &t->constants[v], &t->slow[v], &none, 1, 1, 1);
        else step(&t->shared, o, i, &t->state[v], &t->constants[v], &t->slow[v], &none, 0, 1, 1);
    }
}

void team_block(Team *t, Commander *c)
{
    vd greatest[t->vectors];
    for (int i = 0; i < BLOCK; i++) command_next(c, &t->command[i]);
    for (int v = 0; v < t->vectors; v++) {
        t->before[v] = t->state[v];
        slow_terms(t, v);
        greatest[v] = all(0);
    }
    const Shared shared = t->shared;
    const int whole = t->vectors / TOGETHER * TOGETHER;
    for (int i = 0; i < BLOCK; i++) {
        const Command *o = &t->command[i];
        LaneState *s = t->state;
        const LaneConstants *k = t->constants;
        const LaneSlow *b = t->slow;
        int v = 0;
        if (o->split < 1.0) {
            for (; v < whole; v += TOGETHER) step(&shared, o, i, s + v, k + v, b + v, greatest + v, 1, 0, TOGETHER);
            for (; v < t->vectors; v++) step(&shared, o, i, s + v, k + v, b + v, greatest + v, 1, 0, 1);
        } else {
            for (; v < whole; v += TOGETHER) step(&shared, o, i, s + v, k + v, b + v, greatest + v, 0, 0, TOGETHER);
            for (; v < t->vectors; v++) step(&shared, o, i, s + v, k + v, b + v, greatest + v, 0, 0, 1);
        }
    }
    for (int v = 0; v < t->vectors; v++)
        if (__builtin_expect(any(above(size_of(greatest[v]), t->constants[v].clutch)), 0)) block_slipping(t, v);
}
