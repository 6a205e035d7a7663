/* The reference cases: parameters and plans. */
#include "cases.h"
#include <math.h>
#include <string.h>

#define DEG (M_PI / 180)
#define ARCSEC (DEG / 3600)
/* Rotor damping of the full-stepping runs, N m s/rad. Without it the start-up resonance brings the load angle
   to 2.5 rad, and whether sync is lost turns on details: no fair ground for comparing numbers. */
#define FULL_STEP_DAMPING 5e-3

/* "Nominal": a 400-step motor on a 5 x 144 reduction. */
static Par nominal(void)
{
    Par p = { .Nr = 100, .R = 1.5, .L = 3e-3, .Irated = 1.5, .I = 1.5, .Thold = 0.40, .Td = 0.015, .J = 6e-6, .Bm = 1e-5, .Tcm = 0.005,
              .Dd = 0, .Vs = 24, .tau = 100e-6, .F = 1, .changeover = 20, .n = 720, .k = 2e4, .zeta = 0.05, .b = 30 * ARCSEC, .etad = 0.45,
              .etab = 2 - 1 / 0.45, .Aper = 8 * ARCSEC, .Nper = 144, .Jx = 6, .Bx = 0.1, .Tcx = 0.8, .Timb = 4, .lat = 50 * DEG,
              .freeze_quadrant = -1 };
    p.ia0 = p.I;                                                /* microstep command at angle 0 */
    return p;
}

static Par motor_alone(double inertia_added, double Dd)
{
    Par p = nominal();
    p.n = 0; p.Tcm = 0; p.etad = p.etab = 1; p.J += inertia_added; p.Dd = Dd;
    p.k = p.zeta = p.b = p.Aper = p.Nper = p.Jx = p.Bx = p.Tcx = p.Timb = 0;
    return p;
}

/* Full-stepping starts on a two-phase-on position: command and rotor at a quarter of pi electrical, both currents full. */
static void full_step_start(Par *p) { p->changeover = 0; p->ia0 = p->ib0 = p->F * p->I; }

static void run_up(Par *p, double th0, double speed, double ramp, double tend)
{
    double a = speed / ramp;
    p->piece[0] = (Piece){ 0, th0, 0, a };
    p->piece[1] = (Piece){ ramp, th0 + 0.5 * speed * ramp, speed, 0 };
    p->npiece = 2;
    p->tend = tend;
}

/* Trapezoid at the axis, made at the motor. */
static void trapezoid(Par *p, double distance, double rate, double ramp, double hold)
{
    double w = rate * p->n, a = w / ramp, cruise = distance / rate - ramp, t2 = ramp + cruise, t3 = t2 + ramp;
    p->piece[0] = (Piece){ 0, 0, 0, a };
    p->piece[1] = (Piece){ ramp, 0.5 * w * ramp, w, 0 };
    p->piece[2] = (Piece){ t2, 0.5 * w * ramp + w * cruise, w, -a };
    p->piece[3] = (Piece){ t3, distance * p->n, 0, 0 };
    p->npiece = 4;
    p->tend = t3 + hold;
}

static void sample_evenly(Case *c, int n, double from, double to)
{
    c->nsample = n;
    for (int i = 0; i < n; i++) c->ts[i] = from + (to - from) * (i + 1) / n;
}

static Case single_step(void)
{
    Case c = { .name = "A", .title = "single full step of the free rotor, two phases on" };
    c.p = motor_alone(0, 0);
    c.p.Bm = 1e-4;
    full_step_start(&c.p);
    c.p.freeze_quadrant = 1;
    c.p.piece[0] = (Piece){ 0, 3 * M_PI_4 / c.p.Nr, 0, 0 };
    c.p.npiece = 1;
    c.p.tend = 0.04;
    c.p.d0 = -M_PI_2 / c.p.Nr;
    sample_evenly(&c, 20, 0, 0.04);
    return c;
}

static Case full_stepping(void)
{
    Case c = { .name = "B", .title = "motor alone full-stepping: 0 to 40 rad/s in 0.2 s, then 0.2 s constant" };
    c.p = motor_alone(1.2e-5, FULL_STEP_DAMPING);
    full_step_start(&c.p);
    run_up(&c.p, M_PI_4 / c.p.Nr, 40, 0.2, 0.4);
    c.p.load_rate = 1; c.p.load_max = 0.05;
    sample_evenly(&c, 20, 0, 0.4);
    return c;
}

static Case microstepping(void)
{
    Case c = { .name = "C", .title = "motor alone microstepping at 12 V: 0 to 38 rad/s in 0.2 s, then 0.2 s constant" };
    c.p = motor_alone(1.2e-5, 0);
    c.p.changeover = -1;
    c.p.Vs = 12;
    run_up(&c.p, 0, 38, 0.2, 0.4);
    c.p.load_rate = 1; c.p.load_max = 0.05;
    sample_evenly(&c, 20, 0, 0.4);
    return c;
}

static Case linear_axis(void)
{
    Case c = { .name = "D", .title = "axis without friction, backlash, loss or periodic error, microstepping: 1 deg, 2 deg/s, 0.2 s ramps" };
    c.p = nominal();
    c.p.changeover = -1;
    c.p.Tcm = c.p.Tcx = c.p.b = c.p.Aper = 0;
    c.p.etad = c.p.etab = 1;
    trapezoid(&c.p, 1 * DEG, 2 * DEG, 0.2, 0.3);
    sample_evenly(&c, 20, 0, 1.0);
    return c;
}

static Case rough_axis(void)
{
    Case c = { .name = "E", .title = "nominal axis with everything: 2 deg, 3 deg/s, 0.3 s ramps, changeover 20 rad/s, hold 1.5 s", .events = 1 };
    c.p = nominal();
    trapezoid(&c.p, 2 * DEG, 3 * DEG, 0.3, 1.5);
    double move = c.p.piece[3].t;
    c.nsample = 30;
    for (int i = 0; i < 20; i++) c.ts[i] = move * (i + 1) / 20;
    for (int i = 0; i < 10; i++) c.ts[20 + i] = move + 0.015 * (1 << i) / 5.12;
    c.ts[29] = c.p.tend;
    return c;
}

/* In the nominal case both directions lose alike (eta_b = 2 - 1/eta_d); here they do not, and the load drives back. */
static Case unequal_efficiencies(void)
{
    Case c = rough_axis();
    c.name = "I";
    c.title = "case E with efficiencies 0.8 driving and 0.4 back-driving, a strong helping imbalance, little motor friction, full-step current 0.85";
    c.p.etad = 0.8; c.p.etab = 0.4; c.p.Timb = 100; c.p.Tcm = 5e-4; c.p.F = 0.85;
    return c;
}

static Case slew(int opposing)
{
    Case c = { .name = opposing ? "F_opposing" : "F_helping", .title = opposing
        ? "nominal slew of 90 deg, imbalance opposing" : "nominal slew of 90 deg, imbalance helping", .events = 1 };
    c.p = nominal();
    if (opposing) c.p.Timb = -c.p.Timb;
    trapezoid(&c.p, 90 * DEG, 3 * DEG, 2, 3);
    static const double t[] = { 0.5, 1, 2, 4, 8, 12, 16, 20, 24, 28, 30, 31, 31.5, 31.9, 32, 32.001, 32.003, 32.01, 32.02, 32.05, 32.1, 32.2, 32.5, 33, 35 };
    c.nsample = sizeof t / sizeof *t;
    memcpy(c.ts, t, sizeof t);
    return c;
}

static Case sagging(void)
{
    Case c = full_stepping();
    c.name = "G";
    c.title = "case B with supply sag";
    c.p.Rs = 0.3; c.p.C = 1e-3;
    return c;
}

static Case pull_out(void)
{
    Case c = { .name = "H", .title = "pull-out of the motor alone, full-stepping at 60 rad/s", .stop_when_lost = 1 };
    c.p = motor_alone(1.2e-5, FULL_STEP_DAMPING);
    full_step_start(&c.p);
    run_up(&c.p, M_PI_4 / c.p.Nr, 60, 0.3, 2.9);
    c.p.load_t0 = 0.5; c.p.load_rate = 0.2; c.p.load_max = 0.48;
    sample_evenly(&c, 24, 0.5, 2.9);
    return c;
}

int case_count(void) { return 10; }

Case case_get(int i)
{
    switch (i) {
    case 0: return single_step();
    case 1: return full_stepping();
    case 2: return microstepping();
    case 3: return linear_axis();
    case 4: return rough_axis();
    case 5: return slew(0);
    case 6: return slew(1);
    case 7: return sagging();
    case 8: return pull_out();
    default: return unequal_efficiencies();
    }
}
