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

typedef struct { vd end, mean; } Phase;

/* One phase: regulated, held to what full voltage allows. emf: what the back-EMF alone would drive by the end of the step. */
INLINE Phase phase(vd start, vd target, Decay regulator, Decay winding, vd emf, double share, double limit, double mean_limit)
{
    vd off = start - target, base = mad(all(winding.end), start, emf), mean_base = mad(all(share), emf, all(winding.mean) * start);
    vd reach = mad(off, all(regulator.end), target) - base, held = within(reach, all(limit));
    vd mean = pick(differs(reach, held), mean_base + with_sign(all(mean_limit), reach), mad(off, all(regulator.mean), target));
    return (Phase){ base + held, mean };
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

#define EACH _Pragma("GCC unroll 8") for (int v = 0; v < count; v++)

/* One step of a few vectors of lanes. split, clutch and count are known where it is compiled. */
INLINE void step(const Shared *restrict k, const Command *restrict o, double number, LaneState *restrict s, const LaneConstants *restrict c,
    const LaneSlow *restrict b, vd *restrict greatest, const int split, const int clutch, const int count)
{
    vd sn[count], cs[count], smooth[count], square[count], push[count], mesh[count];
    EACH sine_cosine_v(s[v].rotor, &sn[v], &cs[v]);
    EACH {
        /* Twelve times the mean of a sine over the angle swept, against its middle. */
        vd m = s[v].rotor_mid;
        square[v] = m * m;
        smooth[v] = nmad(square[v], all(0.5), all(12));
    }
    EACH {
        vd ia = s[v].ia, ib = s[v].ib, target_a = c[v].current * all(o->a), target_b = c[v].current * all(o->b), m = s[v].rotor_mid;
        vd emf = c[v].emf * (m * smooth[v]);
        Phase a, d;
        const double top = k->volts * k->conductance;
        if (!split) {
            const Decay r = k->regulator, w = k->winding;
            const double end = 1 - w.end, mean = 1 - w.mean, share = mean / end;
            emf = emf * all(end);
            a = phase(ia, target_a, r, w, emf * sn[v], share, top * end, top * mean);
            d = phase(ib, target_b, r, w, -emf * cs[v], share, top * end, top * mean);
        } else {
            const double f = o->split, g = 1 - f;
            const Decay w1 = o->winding[0], w2 = o->winding[1];
            const double end1 = 1 - w1.end, mean1 = 1 - w1.mean, end2 = 1 - w2.end, mean2 = 1 - w2.mean;
            vd ea = emf * sn[v], eb = emf * cs[v], early = m * all(-0.5 * g), late = m * all(0.5 * f);
            Phase p = phase(ia, target_a, o->regulator[0], w1, mad(early, eb, ea) * all(end1), mean1 / end1, top * end1, top * mean1);
            a = phase(p.end, c[v].current * all(o->next_a), o->regulator[1], w2, mad(late, eb, ea) * all(end2), mean2 / end2, top * end2, top * mean2);
            a.mean = mad(all(f), p.mean, all(g) * a.mean);
            p = phase(ib, target_b, o->regulator[0], w1, msub(early, ea, eb) * all(end1), mean1 / end1, top * end1, top * mean1);
            d = phase(p.end, c[v].current * all(o->next_b), o->regulator[1], w2, msub(late, ea, eb) * all(end2), mean2 / end2, top * end2, top * mean2);
            d.mean = mad(all(f), p.mean, all(g) * d.mean);
        }
        s[v].ia = a.end;
        s[v].ib = d.end;
        vd lean = mad(a.end - ia, cs[v], (d.end - ib) * sn[v]), pull = nmad(m, lean, msub(d.mean, cs[v], a.mean * sn[v]) * smooth[v]);
        vd twice = sn[v] + sn[v], cog = (twice * cs[v]) * nmad(twice, sn[v], all(1));
        push[v] = mad(cog, c[v].detent * nmad(square[v], all(2.0 / 3), all(1)), all(o->probe * k->push_scale));
        push[v] = mad(c[v].torque, pull, nmad(c[v].viscous, m, push[v]));
    }
    EACH {
        vd twist = mad(s[v].rotor, b[v].geared, mad(b[v].error_step, all(number), b[v].error)) - s[v].axis;
        vd rate = msub(s[v].rotor_mid, b[v].geared, s[v].axis_mid);
        if (clutch) twist = twist - s[v].slip;
        vd spring = c[v].stiffness * (twist - within(twist, c[v].half_backlash));
        mesh[v] = spring + within(c[v].damping * rate, spring);
        if (!clutch) greatest[v] = larger(greatest[v], mesh[v]);
        else if (any(above(size_of(mesh[v]), c[v].clutch))) mesh[v] = slipping(&s[v], &c[v], twist, rate, mesh[v]);
    }
    EACH {
        vd w = s[v].rotor_speed, x = s[v].axis_speed, resist = mad(size_of(mesh[v]), c[v].even, c[v].coulomb);
        vd pushed = nmad(mesh[v], b[v].load, push[v]), gain = pushed - with_sign(resist, w), after = w + gain;
        vd angle = s[v].rotor + after, next = mad(all(0.5), gain, after);
        vd shove = nmad(c[v].axis_viscous, s[v].axis_mid, mesh[v] + mad(b[v].gravity_step, all(number), b[v].gravity));
        vd axis_gain = msub(c[v].axis_scale, shove, with_sign(c[v].axis_coulomb, x)), axis_after = x + axis_gain;
        vd axis_angle = s[v].axis + axis_after, axis_next = mad(all(0.5), axis_gain, axis_after);
        if (__builtin_expect(any_opposed(w, after, x, axis_after), 0)) {
            mask stops = opposed(w, after), axis_stops = opposed(x, axis_after);
            if (any(stops)) after = cut(w, after, pushed, resist, s[v].rotor, stops, &angle, &next);
            if (any(axis_stops)) axis_after = cut(x, axis_after, c[v].axis_scale * shove, c[v].axis_coulomb, s[v].axis, axis_stops, &axis_angle, &axis_next);
        }
        s[v].rotor = angle;
        s[v].rotor_speed = after;
        s[v].rotor_mid = next;
        s[v].axis = axis_angle;
        s[v].axis_speed = axis_after;
        s[v].axis_mid = axis_next;
    }
}

#ifndef TOGETHER
#define TOGETHER 2                                                 /* vectors in one pass of the inner loop */
#endif

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
