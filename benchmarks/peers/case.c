#include "case.h"
#include <math.h>

static const double degree = M_PI / 180, arcsecond = M_PI / 648000;

Axis nominal_axis(double imbalance)
{
    Axis a = {
        .teeth = 100, .km = 0.40 / (sqrt(2.0) * 1.5), .detent = 0.015, .resistance = 1.5, .inductance = 3e-3, .rotor_inertia = 6e-6,
        .rotor_viscous = 1e-5, .rotor_coulomb = 0.005, .volts = 24, .current = 1.5, .fraction = 1, .regulator = 100e-6, .changeover = 20,
        .worm_ratio = 720, .wheel_ratio = 144, .stiffness = 2e4, .half_backlash = 0.5 * (30 * arcsecond), .clutch = 60, .periodic = 8 * arcsecond,
        .axis_inertia = 6, .axis_viscous = 0.1, .axis_coulomb = 0.8,
    };
    a.mesh_damping = 2.0 * 0.05 * sqrt(a.stiffness * a.axis_inertia);
    /* A plain driving efficiency e implies 2 - 1/e for being driven back. */
    double driving = 0.45, back = 2.0 - 1.0 / driving;
    a.loss_driving = 1.0 / driving - 1.0;
    a.loss_back = 1.0 - back;
    a.gravity = imbalance * cos(50 * degree);
    return a;
}

/* Bisection to the last digit for the time at which a ramp passes the changeover, as the program finds it. */
static double crossing(const Plan *p, int piece, double speed, int above_at_start)
{
    double low = p->start[piece], high = p->start[piece + 1];
    for (int k = 0; k < 60; k++) {
        double middle = 0.5 * (low + high), s = middle - p->start[piece];
        int above = fabs(p->velocity[piece] + s * (2.0 * p->half_acceleration[piece])) > speed;
        if (above == above_at_start) low = middle; else high = middle;
    }
    return 0.5 * (low + high);
}

Plan slew_plan(const Axis *a, double distance, double rate, double ramp_seconds)
{
    Plan p = { .pieces = 4 };
    double acceleration = rate / ramp_seconds, peak = fmin(rate, sqrt(acceleration * distance)), ramp = peak / acceleration;
    double duration[3] = { ramp, (distance - ramp * peak) / peak, ramp }, gain[3] = { acceleration, 0, -acceleration };
    double time = 0, position = 0, velocity = 0;
    for (int i = 0; i < 3; i++) {
        p.start[i] = time;
        p.position[i] = a->worm_ratio * position;
        p.velocity[i] = a->worm_ratio * velocity;
        p.half_acceleration[i] = 0.5 * a->worm_ratio * gain[i];
        double s = duration[i];
        position += s * (velocity + s * (gain[i] / 2.0));
        velocity += s * gain[i];
        time += s;
    }
    p.start[3] = p.slew_seconds = p.start[2] + duration[2];
    p.position[3] = a->worm_ratio * distance;
    p.mode_full[0] = 0;
    p.modes = 1;
    for (int i = 0; i < 3; i++) {
        int before = p.mode_full[p.modes - 1], first = fabs(p.velocity[i]) > a->changeover;
        if (first != before) { p.mode_time[p.modes] = p.start[i]; p.mode_full[p.modes++] = first; }
        double end = p.velocity[i] + (p.start[i + 1] - p.start[i]) * 2.0 * p.half_acceleration[i];
        if ((fabs(end) > a->changeover) != first) { p.mode_time[p.modes] = crossing(&p, i, a->changeover, first); p.mode_full[p.modes++] = !first; }
    }
    return p;
}
