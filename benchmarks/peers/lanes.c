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
    double scale = s->h * s->inverse_rotor_inertia;
    LaneConstants *k = &t->constants[v];
    k->current[i] = a->current;
    k->emf_end[i] = a->km * s->conductance * (1 - s->winding.end);
    k->emf_mean[i] = a->km * s->conductance * (1 - s->winding.mean);
    k->torque[i] = a->km * scale;
    k->detent[i] = -4 * a->detent * scale;
    k->viscous[i] = a->rotor_viscous * scale;
    k->coulomb[i] = a->rotor_coulomb * scale;
    k->even[i] = 0.5 * (a->loss_driving + a->loss_back) * s->inverse_worm * scale;
    k->odd[i] = 0.5 * (a->loss_driving - a->loss_back) * s->inverse_worm * scale;
    k->scale[i] = scale;
    k->stiffness[i] = a->stiffness;
    k->damping[i] = a->mesh_damping;
    k->half_backlash[i] = a->half_backlash;
    k->clutch[i] = a->clutch;
    k->axis_scale[i] = s->h / a->axis_inertia;
    k->axis_viscous[i] = a->axis_viscous;
    k->axis_coulomb[i] = a->axis_coulomb;
    k->gravity[i] = a->gravity;
    k->periodic[i] = a->periodic;
    for (size_t j = 0; j < sizeof(LaneState) / sizeof(vd); j++) ((vd *)&t->state[v])[j][i] = 0;
    t->state[v].ia[i] = a->current;
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
    vd block = all(BLOCK * k->h), sn, cs;
    sine_cosine_v(s->axis, &sn, &cs);
    vd d = block * s->axis_speed, z = d * d;
    vd rise = mad(cs, nmad(d * z, all(1.0 / 6), d), sn * z * mad(z, all(1.0 / 24), all(-0.5)));
    o->gravity_step = c->gravity * rise * all(1.0 / BLOCK);
    o->gravity = mad(o->gravity_step, all(0.5), c->gravity * sn);
    vd wheel = all(k->wheel), worm = s->rotor * all(k->inverse_worm), worm_step = s->rotor_speed * all(k->inverse_worm * k->h);
    sine_cosine_v(wheel * worm, &sn, &cs);
    d = wheel * worm_step * all(BLOCK);
    z = d * d;
    vd sine = d * mad(z, mad(z, all(1.0 / 120), all(-1.0 / 6)), all(1)), cosine = z * mad(z, mad(z, all(-1.0 / 720), all(1.0 / 24)), all(-0.5));
    rise = mad(cs, sine, sn * cosine);
    vd slope = c->periodic * wheel * cs;
    o->error_step = msub(c->periodic * rise, all(1.0 / BLOCK), slope * worm_step);
    o->error = mad(o->error_step, all(0.5), c->periodic * sn - slope * worm - s->slip);
    o->geared = mad(all(k->inverse_worm), slope, all(k->inverse_worm));
    o->load = mad(o->geared, c->scale, c->odd);
}

/* Where a speed passes zero the step is cut there; friction is the same on both sides, for its odd part is in the push. */
static __attribute__((noinline)) vd cut(vd speed, vd after, vd push, vd resist, vd angle, double half, mask where, vd *turned)
{
    vd rest = push - within(push, resist);
    mask moving = differs(speed, all(0));
    vd share = pick(moving, speed / pick(moving, speed - after, all(1)), all(0));
    vd left = all(1) - share, end = left * rest, overrun = pick(moving, mad(left, speed, share * end), all(0));
    *turned = pick(where, mad(all(half), end - overrun, angle), *turned);
    return pick(where, end, after);
}

typedef struct { vd end, mean; } Phase;

/* One phase: regulated, held to what full voltage allows. base and mean_base: the winding under no voltage but its back-EMF. */
INLINE Phase phase(vd start, vd target, Decay regulator, vd base, vd mean_base, double limit, double mean_limit)
{
    vd off = start - target;
    vd reach = mad(off, all(regulator.end), target) - base, held = within(reach, all(limit));
    vd mean = pick(differs(reach, held), mean_base + with_sign(all(mean_limit), reach), mad(off, all(regulator.mean), target));
    return (Phase){ base + held, mean };
}

/* The clutch passes its slip torque; the twist beyond what that holds flows into the slip. */
static __attribute__((noinline)) vd slipping(LaneState *s, const LaneConstants *c, vd twist, vd rate, vd mesh, double h)
{
    mask where = above(size_of(mesh), c->clutch);
    vd zero = all(0), limited = with_sign(c->clutch, mesh), spring = c->stiffness * (twist - within(twist, c->half_backlash));
    vd slip = (rate - (limited - spring) / c->damping) * with_sign(all(1), limited) * all(h);
    vd beyond = (size_of(spring) - c->clutch) / c->stiffness;
    slip = pick(above(slip, zero), slip, zero);
    slip = pick(above(beyond, slip), beyond, slip);
    s->slip = pick(where, s->slip + with_sign(slip, limited), s->slip);
    return pick(where, limited, mesh);
}

/* One step of one vector of lanes. Returns the greatest mesh torque so far. split and clutch are known where it is compiled. */
INLINE vd step(Team *restrict t, int v, const Command *restrict o, double number, const int split, const int clutch, vd greatest)
{
    const Shared *k = &t->shared;
    LaneState *restrict s = &t->state[v];
    const LaneConstants *restrict c = &t->constants[v];
    const LaneSlow *restrict b = &t->slow[v];
    const double half = 0.5 * k->h;
    vd w = s->rotor_speed, wx = s->axis_speed;
    vd rotor = mad(all(half), w, s->rotor), axis = mad(all(half), wx, s->axis);
    vd mid = mad(all(0.5), w - s->rotor_before, w), axis_mid = mad(all(0.5), wx - s->axis_before, wx);

    vd sn, cs;
    sine_cosine_v(all(k->teeth) * rotor, &sn, &cs);
    /* A twelfth of the angle swept in the step. */
    vd sweep = all(k->teeth * k->h / 12) * mid, square = sweep * sweep, smooth = nmad(square, all(6), all(1)), flow = mid * smooth;
    vd ia = s->ia, ib = s->ib, target_a = c->current * all(o->a), target_b = c->current * all(o->b);
    Phase a, d;
    if (!split) {
        const Decay w1 = k->winding;
        const double top = k->volts * k->conductance * (1 - w1.end), mean_top = k->volts * k->conductance * (1 - w1.mean);
        vd push = c->emf_end * flow, mean_push = c->emf_mean * flow;
        a = phase(ia, target_a, k->regulator, mad(push, sn, all(w1.end) * ia), mad(mean_push, sn, all(w1.mean) * ia), top, mean_top);
        d = phase(ib, target_b, k->regulator, nmad(push, cs, all(w1.end) * ib), nmad(mean_push, cs, all(w1.mean) * ib), top, mean_top);
    } else {
        const double f = o->split, g = 1 - f, full = 1 / (1 - k->winding.end), vg = k->volts * k->conductance;
        const Decay w1 = o->winding[0], w2 = o->winding[1];
        vd push = c->emf_end * all(full) * flow, ea = push * sn, eb = push * cs;
        vd early = sweep * all(-6 * g), late = sweep * all(6 * f);
        vd ea1 = mad(early, eb, ea), eb1 = nmad(early, ea, eb), ea2 = mad(late, eb, ea), eb2 = nmad(late, ea, eb);
        Phase p = phase(ia, target_a, o->regulator[0], mad(ea1, all(1 - w1.end), all(w1.end) * ia), mad(ea1, all(1 - w1.mean), all(w1.mean) * ia), vg * (1 - w1.end), vg * (1 - w1.mean));
        a = phase(p.end, c->current * all(o->next_a), o->regulator[1], mad(ea2, all(1 - w2.end), all(w2.end) * p.end),
            mad(ea2, all(1 - w2.mean), all(w2.mean) * p.end), vg * (1 - w2.end), vg * (1 - w2.mean));
        a.mean = mad(all(f), p.mean, all(g) * a.mean);
        p = phase(ib, target_b, o->regulator[0], nmad(eb1, all(1 - w1.end), all(w1.end) * ib), nmad(eb1, all(1 - w1.mean), all(w1.mean) * ib), vg * (1 - w1.end), vg * (1 - w1.mean));
        d = phase(p.end, c->current * all(o->next_b), o->regulator[1], nmad(eb2, all(1 - w2.end), all(w2.end) * p.end),
            nmad(eb2, all(1 - w2.mean), all(w2.mean) * p.end), vg * (1 - w2.end), vg * (1 - w2.mean));
        d.mean = mad(all(f), p.mean, all(g) * d.mean);
    }
    s->ia = a.end;
    s->ib = d.end;
    vd lean = mad(a.end - ia, cs, (d.end - ib) * sn), pull = nmad(sweep, lean, msub(d.mean, cs, a.mean * sn) * smooth);
    vd cog = sn * cs * msub(cs, cs, sn * sn) * (c->detent * nmad(square, all(96), all(1)));

    vd twist = mad(rotor, b->geared, mad(b->error_step, all(number), b->error)) - axis, rate = msub(mid, b->geared, axis_mid);
    if (clutch) twist = twist - s->slip;
    vd spring = c->stiffness * (twist - within(twist, c->half_backlash)), mesh = spring + within(c->damping * rate, spring);
    if (!clutch) greatest = larger(greatest, mesh);
    else if (any(above(size_of(mesh), c->clutch))) mesh = slipping(s, c, twist, rate, mesh, k->h);

    vd push = nmad(c->viscous, mid, mad(all(o->probe), c->scale, cog));
    push = nmad(mesh, b->load, mad(c->torque, pull, push));
    vd resist = mad(size_of(mesh), c->even, c->coulomb), after = w + (push - with_sign(resist, w)), angle = mad(all(half), after, rotor);
    vd shove = nmad(c->axis_viscous, axis_mid, mesh + mad(b->gravity_step, all(number), b->gravity));
    vd axis_after = mad(c->axis_scale, shove - with_sign(c->axis_coulomb, wx), wx), axis_angle = mad(all(half), axis_after, axis);
    mask stops = not_above(w * after, all(0)), axis_stops = not_above(wx * axis_after, all(0));
    if (__builtin_expect(any(either(stops, axis_stops)), 0)) {
        if (any(stops)) after = cut(w, after, push, resist, rotor, half, stops, &angle);
        if (any(axis_stops)) axis_after = cut(wx, axis_after, c->axis_scale * shove, c->axis_scale * c->axis_coulomb, axis, half, axis_stops, &axis_angle);
    }
    s->rotor = angle;
    s->rotor_before = w;
    s->rotor_speed = after;
    s->axis = axis_angle;
    s->axis_before = wx;
    s->axis_speed = axis_after;
    return greatest;
}

/* The block again for one vector, now with a clutch that slips. */
static __attribute__((noinline)) void block_slipping(Team *t, int v)
{
    t->state[v] = t->before[v];
    t->slow[v].error = t->slow[v].error + t->state[v].slip;
    for (int i = 0; i < BLOCK; i++) {
        if (t->command[i].split < 1.0) step(t, v, &t->command[i], i, 1, 1, all(0));
        else step(t, v, &t->command[i], i, 0, 1, all(0));
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
    for (int i = 0; i < BLOCK; i++) {
        const Command *o = &t->command[i];
        if (o->split < 1.0) for (int v = 0; v < t->vectors; v++) greatest[v] = step(t, v, o, i, 1, 0, greatest[v]);
        else for (int v = 0; v < t->vectors; v++) greatest[v] = step(t, v, o, i, 0, 0, greatest[v]);
    }
    for (int v = 0; v < t->vectors; v++)
        if (__builtin_expect(any(above(size_of(greatest[v]), t->constants[v].clutch)), 0)) block_slipping(t, v);
}
