#include "hybrid.h"
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Size of each state where errors begin to matter; the axis deviation is of the order of arcseconds. */
#ifdef SPEED_ONLY
static const double scale[NEQ] = { 1, 1, 1e-2, 10, 1e-5, 1e-2 };
#else
static const double scale[NEQ] = { 1, 1, 1e-2, 10, 1e-5, 1e-2, 10, 1, 1 };
static const int peak_state[NPEAK] = { D, DX, W, IA };
#endif
typedef struct { const Par *p; Mode m; } Ctx;

static int f_rhs(realtype t, N_Vector y, N_Vector yd, void *u)
{
    Ctx *c = u;
    derivative(c->p, &c->m, t, N_VGetArrayPointer(y), N_VGetArrayPointer(yd));
    return 0;
}
static int f_root(realtype t, N_Vector y, realtype *g, void *u)
{
    Ctx *c = u;
    switching(c->p, &c->m, t, N_VGetArrayPointer(y), g);
    return 0;
}
static void need(int ok, const char *what) { if (!ok) { fprintf(stderr, "failed: %s\n", what); exit(1); } }

/* Splits the plan where it crosses the changeover speed, so that each piece is wholly full-step or wholly microstep. */
static Par split_plan(const Par *src)
{
    Par p = *src;
    p.npiece = 0;
    for (int i = 0; i < src->npiece; i++) {
        Piece q = src->piece[i];
        double end = i + 1 < src->npiece ? src->piece[i + 1].t : src->tend;
        need(p.npiece < 8, "room for plan pieces");
        p.piece[p.npiece++] = q;
        if (src->changeover > 0 && q.a != 0) {
            double s = (src->changeover - q.w) / q.a;
            if (s > 0 && q.t + s < end) {
                need(p.npiece < 8, "room for plan pieces");
                p.piece[p.npiece++] = (Piece){ q.t + s, q.th + s * (q.w + 0.5 * q.a * s), src->changeover, q.a };
            }
        }
    }
    return p;
}

static double piece_end(const Par *p, int i) { return i + 1 < p->npiece ? p->piece[i + 1].t : p->tend; }

static void enter_piece(const Par *p, Mode *m, int i)
{
    m->piece = i;
    double thc, wc, mid = 0.5 * (p->piece[i].t + piece_end(p, i));
    plan_at(p, i, mid, &thc, &wc);
    m->full = p->changeover == 0 || (p->changeover > 0 && fabs(wc) > p->changeover);
    m->quadrant = p->freeze_quadrant >= 0 ? p->freeze_quadrant : (int)floor(p->piece[i].th * p->Nr / M_PI_2);
}

/* Time at which the plan reaches the next full-step edge, or infinity. The plans here never run backwards. */
static double next_edge(const Par *p, const Mode *m)
{
    const Piece *q = &p->piece[m->piece];
    if (!m->full || p->freeze_quadrant >= 0 || (q->w == 0 && q->a == 0)) return INFINITY;
    double dist = (m->quadrant + 1) * M_PI_2 / p->Nr - q->th, disc = q->w * q->w + 2 * q->a * dist;
    return disc < 0 ? INFINITY : q->t + 2 * dist / (q->w + sqrt(disc));
}

static void log_event(Result *r, const Ctx *c, double t, const char *name, const double *y)
{
    r->events_total++;
    if (r->nevent >= MAX_EVENTS) return;
    Event *e = &r->event[r->nevent++];
    Now o;
    evaluate(c->p, &c->m, t, y, &o);
    e->t = t; e->name = name; e->x = o.x; e->tm = o.tm;
    memcpy(e->y, y, sizeof e->y);
}

static void saturation_signs(Ctx *c, double t, const double *y)
{
    double g[NROOT];
    switching(c->p, &c->m, t, y, g);
    for (int i = G_AHI; i <= G_BLO; i++) c->m.sgn[i] = g[i] > 0 ? 1 : -1;
}

/* A speed has reached zero: does the body stay, pass through, or turn back? */
static void at_zero_speed(Ctx *c, double t, double *y, int shaft, Result *r)
{
    Now o;
    Mode *m = &c->m;
    y[shaft ? W : WX] = 0;
    evaluate(c->p, m, t, y, &o);
    double net = shaft ? o.shaft_net : o.axis_net, fp = shaft ? o.shaft_fp : c->p->Tcx, fm = shaft ? o.shaft_fm : c->p->Tcx;
    int s = net > fp ? 1 : net < -fm ? -1 : 0;
    *(shaft ? &m->shaft : &m->axis) = s;
    if (s == 0) *(shaft ? &r->last_shaft_stick : &r->last_axis_stick) = t;
    if (t > 0) log_event(r, c, t, shaft ? (s ? "shaft reverses" : "shaft sticks") : (s ? "axis reverses" : "axis sticks"), y);
}

/* Applies what happened at a root (or what a step passed over). Returns whether the solver must restart. */
static int apply(Ctx *c, double t, double *y, const int *found, Result *r)
{
    static const char *rise[NSIGN] = { [G_RGAP] = "contact right", [G_LGAP] = "leaves left" };
    static const char *fall[NSIGN] = { [G_RGAP] = "leaves right", [G_LGAP] = "contact left" };
    Mode *m = &c->m;
    int restart = 0;
    for (int i = 0; i < NSIGN; i++) {
        if (!found[i] || found[i] == m->sgn[i]) continue;
        m->sgn[i] = found[i];
        restart = 1;
        if (i <= G_BLO) r->saturations++;
        const char *name = (found[i] > 0 ? rise : fall)[i];
        if (name) log_event(r, c, t, name, y);
        if (i == G_LOST && found[i] > 0 && isnan(r->t_lost)) {
            Now o;
            evaluate(c->p, m, t, y, &o);
            r->t_lost = t; r->TL_lost = o.TL;
        }
    }
    for (int shaft = 1; shaft >= 0; shaft--) {
        int a = found[shaft ? G_SHAFT_A : G_AXIS_A], b = found[shaft ? G_SHAFT_B : G_AXIS_B];
        int *slip = shaft ? &m->shaft : &m->axis;
        if (*slip && a == -*slip) { at_zero_speed(c, t, y, shaft, r); restart = 1; }
        else if (!*slip && (a > 0 || b < 0)) {
            *slip = a > 0 ? 1 : -1;
            log_event(r, c, t, shaft ? "shaft breaks away" : "axis breaks away", y);
            restart = 1;
        }
    }
    return restart;
}

/* Signs that an accepted step changed without a root being reported (a double root, or a start on the surface). */
static int passed_over(Ctx *c, double t, const double *y, int *found)
{
    double g[NROOT];
    int any = 0;
    switching(c->p, &c->m, t, y, g);
    for (int i = 0; i < NROOT; i++) {
        found[i] = g[i] > 0 ? 1 : g[i] < 0 ? -1 : 0;
        if (i < NSIGN) { if (found[i] && found[i] != c->m.sgn[i]) any = 1; }
    }
    const int slip[2] = { c->m.shaft, c->m.axis };
    for (int i = 0; i < 2; i++) {
        int a = G_SHAFT_A + 2 * i, b = a + 1;
        if (slip[i] ? found[a] == -slip[i] : (found[a] > 0 || found[b] < 0)) any = 1;
    }
    return any;
}

static void record(Ctx *c, double t, const double *y, double e0, Result *r, int i)
{
    memcpy(r->y[i], y, sizeof r->y[i]);
    evaluate(c->p, &c->m, t, y, &r->now[i]);
    r->ts[i] = t;
#ifdef SPEED_ONLY
    (void)e0;
#else
    double res = fabs(y[EIN] - y[EDISS] - (stored_energy(c->p, &c->m, t, y) - e0));
    if (res > r->energy_residual) r->energy_residual = res;
    r->energy_in = y[EIN];
#endif
}

#ifndef SPEED_ONLY
/* Greatest magnitudes over the last step, turning points found by bisection on the solver's own interpolant. */
static void peaks(void *mem, double ta, double tb, N_Vector w, Result *r)
{
    double *v = N_VGetArrayPointer(w), va[NEQ], vb[NEQ];
    CVodeGetDky(mem, ta, 1, w); memcpy(va, v, sizeof va);
    CVodeGetDky(mem, tb, 1, w); memcpy(vb, v, sizeof vb);
    CVodeGetDky(mem, tb, 0, w);
    double yb[NEQ];
    memcpy(yb, v, sizeof yb);
    for (int k = 0; k < NPEAK; k++) {
        int i = peak_state[k];
        double best = fabs(yb[i]), tbest = tb;
        if (va[i] * vb[i] < 0 && best > 0.8 * r->peak[k]) {
            double lo = ta, hi = tb;
            for (int n = 0; n < 30; n++) {
                double mid = 0.5 * (lo + hi);
                CVodeGetDky(mem, mid, 1, w);
                if (v[i] * va[i] > 0) lo = mid; else hi = mid;
            }
            CVodeGetDky(mem, lo, 0, w);
            if (fabs(v[i]) > best) { best = fabs(v[i]); tbest = lo; }
        }
        if (best > r->peak[k]) { r->peak[k] = best; r->peak_t[k] = tbest; }
    }
}
#endif

static double next_stop(const Par *p, const Mode *m)
{
    double stop = fmin(piece_end(p, m->piece), next_edge(p, m));
    if (p->load_max > 0 && m->loadphase == 0) stop = fmin(stop, p->load_t0);
    if (p->load_max > 0 && m->loadphase == 1) stop = fmin(stop, p->load_t0 + p->load_max / p->load_rate);
    return stop;
}

/* A planned discontinuity has been reached. */
static void pass_stop(Ctx *c, double t, Result *r)
{
    const Par *p = c->p;
    Mode *m = &c->m;
    double edge = next_edge(p, m);
    if (p->load_max > 0 && m->loadphase == 0 && t >= p->load_t0) m->loadphase = 1;
    else if (p->load_max > 0 && m->loadphase == 1 && t >= p->load_t0 + p->load_max / p->load_rate) m->loadphase = 2;
    if (t >= edge) { m->quadrant++; r->edges++; }
    if (t >= piece_end(p, m->piece) && m->piece + 1 < p->npiece) enter_piece(p, m, m->piece + 1);
}

static void start(Ctx *c, double *y, Result *r)
{
    const Par *p = c->p;
    for (int i = 0; i < NEQ; i++) y[i] = 0;
    y[IA] = p->ia0; y[IB] = p->ib0; y[D] = p->d0;
#ifndef SPEED_ONLY
    y[VBUS] = p->Vs;
#endif
    enter_piece(p, &c->m, 0);
    double g[NROOT];
    c->m.shaft = c->m.axis = 0;
    switching(p, &c->m, 0, y, g);
    /* Without backlash the start lies on the surfaces: the first motion winds the mesh up to the right. */
    for (int i = 0; i < NSIGN; i++) c->m.sgn[i] = g[i] > 0 ? 1 : g[i] < 0 ? -1 : (i == G_RDBL || i == G_LDBL) ? -1 : 1;
    if (p->Tcm > 0 || p->etad < 1) at_zero_speed(c, 0, y, 1, r);
    if (p->n > 0 && p->Tcx > 0) at_zero_speed(c, 0, y, 0, r);
    saturation_signs(c, 0, y);
}

void hybrid_run(const Par *given, double tol, int bdf, int nsample, const double *ts, int stop_when_lost, Result *r)
{
    Par p = split_plan(given);
    Ctx c = { .p = &p };
    SUNContext sun;
    memset(r, 0, sizeof *r);
    r->t_lost = r->TL_lost = NAN;
    r->nsample = nsample;
    need(SUNContext_Create(NULL, &sun) == 0, "context");
    N_Vector yv = N_VNew_Serial(NEQ, sun), av = N_VClone(yv), wv = N_VClone(yv);
    double *y = N_VGetArrayPointer(yv), t = 0;
    for (int i = 0; i < NEQ; i++) N_VGetArrayPointer(av)[i] = tol * scale[i];
    start(&c, y, r);
    double e0 = stored_energy(&p, &c.m, 0, y);
    void *mem = CVodeCreate(bdf ? CV_BDF : CV_ADAMS, sun);
    need(CVodeInit(mem, f_rhs, 0, yv) == 0 && CVodeSVtolerances(mem, tol, av) == 0 && CVodeSetUserData(mem, &c) == 0
         && CVodeRootInit(mem, NROOT, f_root) == 0 && CVodeSetNoInactiveRootWarn(mem) == 0, "set-up");
    SUNNonlinearSolver ns = NULL; SUNLinearSolver ls = NULL; SUNMatrix mat = NULL;
    if (bdf) { mat = SUNDenseMatrix(NEQ, NEQ, sun); ls = SUNLinSol_Dense(yv, mat, sun); need(CVodeSetLinearSolver(mem, ls, mat) == 0, "linear solver"); }
    else { ns = SUNNonlinSol_FixedPoint(yv, 0, sun); need(CVodeSetNonlinearSolver(mem, ns) == 0, "fixed point"); }

    int is = 0;
    while (is < nsample && ts[is] <= 0) record(&c, 0, y, e0, r, is++);
    while (t < p.tend && !(stop_when_lost && !isnan(r->t_lost))) {
        double stop = next_stop(&p, &c.m);
        long n;
        if (stop > t + 1e-15 + 2e-15 * t) {          /* the solver refuses a shorter span */
            need(CVodeReInit(mem, t, yv) == 0 && CVodeSetStopTime(mem, stop) == 0, "restart");
            for (int restart = 0; !restart;) {
                double before = t;
                int found[NROOT] = { 0 }, flag = CVode(mem, stop, yv, &t, CV_ONE_STEP);
                need(flag >= 0, "CVode step");
                int sat = c.m.sgn[G_AHI] > 0 || c.m.sgn[G_ALO] < 0 || c.m.sgn[G_BHI] > 0 || c.m.sgn[G_BLO] < 0;
                if (sat) r->sat_time += t - before;
                for (; is < nsample && ts[is] <= t; is++) {
                    CVodeGetDky(mem, ts[is], 0, wv);
                    record(&c, ts[is], N_VGetArrayPointer(wv), e0, r, is);
                }
#ifndef SPEED_ONLY
                peaks(mem, before, t, wv, r);
#endif
                if (flag == CV_ROOT_RETURN) { CVodeGetRootInfo(mem, found); apply(&c, t, y, found, r); restart = 1; }
                else if (passed_over(&c, t, y, found)) { r->missed++; restart = apply(&c, t, y, found, r); }
                if (flag == CV_TSTOP_RETURN) break;
            }
            CVodeGetNumSteps(mem, &n); r->steps += n;
            CVodeGetNumRhsEvals(mem, &n); r->rhs += n;
        } else t = stop;
        if (t >= stop) { pass_stop(&c, t, r); saturation_signs(&c, t, y); }
    }
    while (is < nsample && isnan(r->t_lost)) { record(&c, t, y, e0, r, is); is++; }
    r->nsample = is;
    CVodeFree(&mem);
    if (ns) SUNNonlinSolFree(ns);
    if (ls) SUNLinSolFree(ls);
    if (mat) SUNMatDestroy(mat);
    N_VDestroy(yv); N_VDestroy(av); N_VDestroy(wv);
    SUNContext_Free(&sun);
}
