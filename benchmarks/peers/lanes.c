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
    t->constants = aligned(vectors * sizeof *t->constants);
    t->slow = aligned(vectors * sizeof *t->slow);
    for (int lane = 0; lane < vectors * WIDTH; lane++) team_set(t, lane, a);
    return t;
}

void team_free(Team *t)
{
    free(t->state); free(t->constants); free(t->slow);
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
INLINE vd cut(vd speed, vd after, vd push, vd resist, vd mid, mask where, vd *angle, vd *next)
{
    vd rest = push - within(push, resist), end = rest, way = mid + rest;
    mask moving = both(where, differs(speed, all(0)));
    if (any(moving)) {
        vd share = speed / pick(moving, speed - after, all(1)), left = all(1) - share, overrun = mad(left, speed, share * (left * rest));
        end = pick(moving, left * rest, rest);
        way = pick(moving, nmad(all(0.5), overrun, mid + end), way);
    }
    *angle = pick(where, way, *angle);
    *next = pick(where, mad(all(0.5), end - speed, end), *next);
    return pick(where, end, after);
}

/* The clutch passes its slip torque; the twist beyond what that holds flows into the slip, which the coming block takes off the twist. */
static __attribute__((noinline, cold)) vd slipping(LaneState *s, const LaneConstants *c, LaneSlow *b, vd twist, vd rate, vd mesh)
{
    mask where = above(size_of(mesh), c->clutch);
    vd zero = all(0), limited = with_sign(c->clutch, mesh), spring = c->stiffness * (twist - within(twist, c->half_backlash));
    vd slip = (rate - (limited - spring) / c->damping) * with_sign(all(1), limited);
    vd beyond = (size_of(spring) - c->clutch) / c->stiffness;
    slip = pick(above(slip, zero), slip, zero);
    slip = pick(where, with_sign(pick(above(beyond, slip), beyond, slip), limited), zero);
    s->slip = s->slip + slip;
    b->error = b->error - slip;
    return pick(where, limited, mesh);
}

typedef struct { vd after, angle, next, axis_after, axis_angle, axis_next; } Kick;

/* The kick of both bodies again where a clutch slips or a speed passes zero. push: without the mesh. */
static __attribute__((noinline)) void rare(LaneState *s, const LaneConstants *c, LaneSlow *b, vd push, vd gravity, vd twist, vd rate, vd mesh, Kick *k)
{
    vd w = s->rotor_speed, x = s->axis_speed;
    if (any(above(size_of(mesh), c->clutch))) mesh = slipping(s, c, b, twist, rate, mesh);
    vd resist = mad(size_of(mesh), c->even, c->coulomb), shove = c->axis_scale * nmad(c->axis_viscous, s->axis_mid, mesh + gravity);
    push = nmad(mesh, b->load, push);
    vd gain = push - with_sign(resist, w), axis_gain = shove - with_sign(c->axis_coulomb, x);
    k->after = w + gain;
    k->angle = s->rotor + k->after;
    k->next = mad(all(0.5), gain, k->after);
    k->axis_after = x + axis_gain;
    k->axis_angle = s->axis + k->axis_after;
    k->axis_next = mad(all(0.5), axis_gain, k->axis_after);
    k->after = cut(w, k->after, push, resist, s->rotor, opposed(w, k->after), &k->angle, &k->next);
    k->axis_after = cut(x, k->axis_after, shove, c->axis_coulomb, s->axis, opposed(x, k->axis_after), &k->axis_angle, &k->axis_next);
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

/* Of what the back-EMF drives by the end of an interval, the share that is in the mean. Half in an interval so short that nothing decays. */
INLINE double share_of(Decay w) { return w.end < 1 ? (1 - w.mean) / (1 - w.end) : 0.5; }

INLINE void sines(const vd *restrict x, vd *restrict sine, vd *restrict cosine, const int count)
{
    vd shifted[MOST], r[MOST], z[MOST], zz[MOST], s[MOST], c[MOST], t[MOST], u[MOST], a[MOST], b[MOST];
    EACH shifted[v] = mad(x[v], all(EIGHTHS_PER_RADIAN), all(ROUNDER));
    EACH t[v] = shifted[v] - all(ROUNDER);
    EACH r[v] = nmad(t[v], all(EIGHTH_HIGH), x[v]);
    EACH r[v] = nmad(t[v], all(EIGHTH_LOW), r[v]);
    EACH z[v] = r[v] * r[v];
    EACH s[v] = mad(z[v], all(S4), all(S3));
    EACH c[v] = mad(z[v], all(C4), all(C3));
    EACH t[v] = mad(z[v], all(S2), all(S1));
    EACH u[v] = mad(z[v], all(C2), all(C1));
    EACH zz[v] = z[v] * z[v];
    EACH a[v] = eighth_of(eighth_sine, shifted[v]);
    EACH b[v] = eighth_of(eighth_cosine, shifted[v]);
    EACH s[v] = mad(zz[v], all(S5), s[v]);
    EACH c[v] = mad(zz[v], all(C5), c[v]);
    EACH s[v] = mad(zz[v], s[v], t[v]);
    EACH c[v] = mad(zz[v], c[v], u[v]);
    EACH t[v] = r[v] * z[v];
    EACH c[v] = z[v] * c[v];
    EACH s[v] = mad(t[v], s[v], r[v]);
    EACH t[v] = mad(a[v], c[v], a[v]);
    EACH u[v] = mad(b[v], c[v], b[v]);
    EACH sine[v] = mad(b[v], s[v], t[v]);
    EACH cosine[v] = nmad(a[v], s[v], u[v]);
}

/* One step of a few vectors of lanes. split and count are known where it is compiled. */
INLINE void step(const Shared *restrict k, const Command *restrict o, double number, LaneState *restrict s, const LaneConstants *restrict c,
    LaneSlow *restrict b, const int split, const int count)
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
        const double end = 1 - w.end, mean = 1 - w.mean, share = share_of(w);
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
        const double end1 = 1 - w1.end, mean1 = 1 - w1.mean, share1 = share_of(w1), end2 = 1 - w2.end, mean2 = 1 - w2.mean, share2 = share_of(w2);
        vd early[MOST], late[MOST], e[MOST], p[MOST], q[MOST], first[MOST], then[MOST];
        EACH early[v] = m[v] * all(-0.5 * g);
        EACH late[v] = m[v] * all(0.5 * f);
        EACH ea[v] = emf[v] * sn[v];
        EACH eb[v] = emf[v] * cs[v];
        EACH e[v] = mad(early[v], eb[v], ea[v]) * all(end1);
        phases(start_a, a, o->regulator[0], w1, e, share1, top * end1, top * mean1, p, first, count);
        EACH q[v] = c[v].current * all(o->next_a);
        EACH e[v] = mad(late[v], eb[v], ea[v]) * all(end2);
        phases(p, q, o->regulator[1], w2, e, share2, top * end2, top * mean2, a, then, count);
        EACH mean_a[v] = mad(all(f), first[v], all(g) * then[v]);
        EACH e[v] = msub(early[v], ea[v], eb[v]) * all(end1);
        phases(start_b, d, o->regulator[0], w1, e, share1, top * end1, top * mean1, p, first, count);
        EACH q[v] = c[v].current * all(o->next_b);
        EACH e[v] = msub(late[v], ea[v], eb[v]) * all(end2);
        phases(p, q, o->regulator[1], w2, e, share2, top * end2, top * mean2, d, then, count);
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
    EACH twice[v] = gap[v] - within(gap[v], c[v].half_backlash);
    EACH push[v] = mad(cog[v], c[v].detent * nmad(square[v], all(2.0 / 3), all(1)), push[v]);
    EACH twice[v] = c[v].stiffness * twice[v];
    EACH push[v] = mad(c[v].torque, pull[v], push[v]);
    EACH mesh[v] = twice[v] + within(c[v].damping * rate[v], twice[v]);
    vd resist[MOST], gain[MOST], shove[MOST], gravity[MOST], axis_gain[MOST], pushed[MOST];
    Kick kick[MOST];
    EACH gravity[v] = mad(b[v].gravity_step, all(number), b[v].gravity);
    EACH resist[v] = mad(size_of(mesh[v]), c[v].even, c[v].coulomb);
    EACH pushed[v] = nmad(mesh[v], b[v].load, push[v]);
    EACH shove[v] = nmad(c[v].axis_viscous, s[v].axis_mid, mesh[v] + gravity[v]);
    EACH gain[v] = pushed[v] - with_sign(resist[v], s[v].rotor_speed);
    EACH axis_gain[v] = msub(c[v].axis_scale, shove[v], with_sign(c[v].axis_coulomb, s[v].axis_speed));
    EACH kick[v].after = s[v].rotor_speed + gain[v];
    EACH kick[v].axis_after = s[v].axis_speed + axis_gain[v];
    EACH kick[v].angle = s[v].rotor + kick[v].after;
    EACH kick[v].next = mad(all(0.5), gain[v], kick[v].after);
    EACH kick[v].axis_angle = s[v].axis + kick[v].axis_after;
    EACH kick[v].axis_next = mad(all(0.5), axis_gain[v], kick[v].axis_after);
    EACH if (__builtin_expect(unusual(s[v].rotor_speed, kick[v].after, s[v].axis_speed, kick[v].axis_after, c[v].clutch - size_of(mesh[v])), 0)) {
        Kick again;
        rare(&s[v], &c[v], &b[v], push[v], gravity[v], gap[v], rate[v], mesh[v], &again);
        kick[v] = again;
    }
    EACH s[v].rotor = kick[v].angle;
    EACH s[v].rotor_speed = kick[v].after;
    EACH s[v].rotor_mid = kick[v].next;
    EACH s[v].axis = kick[v].axis_angle;
    EACH s[v].axis_speed = kick[v].axis_after;
    EACH s[v].axis_mid = kick[v].axis_next;
}

void team_block(Team *t, Commander *c)
{
    for (int i = 0; i < BLOCK; i++) command_next(c, &t->command[i]);
    for (int v = 0; v < t->vectors; v++) slow_terms(t, v);
    const Shared shared = t->shared;
    const int whole = t->vectors / TOGETHER * TOGETHER;
    LaneState *s = t->state;
    const LaneConstants *k = t->constants;
    LaneSlow *b = t->slow;
    for (int i = 0; i < BLOCK; i++) {
        const Command *o = &t->command[i];
        int v = 0;
        if (o->split < 1.0) {
            for (; v < whole; v += TOGETHER) step(&shared, o, i, s + v, k + v, b + v, 1, TOGETHER);
            for (; v < t->vectors; v++) step(&shared, o, i, s + v, k + v, b + v, 1, 1);
        } else {
            for (; v < whole; v += TOGETHER) step(&shared, o, i, s + v, k + v, b + v, 0, TOGETHER);
            for (; v < t->vectors; v++) step(&shared, o, i, s + v, k + v, b + v, 0, 1);
        }
    }
}
