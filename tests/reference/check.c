/* A second, plain solution to hold the first against: check DATADIR CASE STEP_S.
   Classical Runge-Kutta at a fixed tiny step in absolute angles; clamps, contact and friction signs are evaluated afresh
   at every stage, with no located events but the command's own (edges, plan corners). Shares only the parameters of cases.c
   with the CVODE solution. Kinks cost it order, hence the tiny step; prints the greatest difference to the stored samples. */
#include "cases.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { X_IA, X_IB, X_TH, X_W, X_THX, X_WX, X_V, NX };
static const Par *P;
static double sgn(double v) { return (v > 0) - (v < 0); }
static double between(double v, double lo, double hi) { return v < lo ? lo : v > hi ? hi : v; }

static void plan(double t, double *th, double *w)
{
    int i = P->npiece - 1;
    while (i > 0 && t < P->piece[i].t) i--;
    double s = t - P->piece[i].t;
    *th = P->piece[i].th + P->piece[i].w * s + P->piece[i].a * s * s / 2;
    *w = P->piece[i].w + P->piece[i].a * s;
}

/* fs, fx: direction in which friction opposes, 0 for a body held still. Returns the torques without friction and its limits. */
static void field(double t, const double *x, int full, double quarter, double fs, double fx, double *dx, double *net, double *lim)
{
    double thc, wc, Km = P->Thold / P->Irated / sqrt(2), e = P->Nr * x[X_TH], sn = sin(e), cs = cos(e);
    plan(t, &thc, &wc);
    double ca = full ? P->F * P->I * sgn(cos(quarter)) : P->I * cos(P->Nr * thc), cb = full ? P->F * P->I * sgn(sin(quarter)) : P->I * sin(P->Nr * thc);
    double ea = -Km * x[X_W] * sn, eb = Km * x[X_W] * cs, V = P->Rs > 0 ? x[X_V] : P->Vs;
    double va = between(P->R * x[X_IA] + ea + P->L / P->tau * (ca - x[X_IA]), -V, V), vb = between(P->R * x[X_IB] + eb + P->L / P->tau * (cb - x[X_IB]), -V, V);
    double Te = Km * (x[X_IB] * cs - x[X_IA] * sn) - P->Td * sin(4 * e), load = between(P->load_rate * (t - P->load_t0), 0, P->load_max), tm = 0, back_torque = 0, loss = 0;
    dx[X_IA] = (va - P->R * x[X_IA] - ea) / P->L;
    dx[X_IB] = (vb - P->R * x[X_IB] - eb) / P->L;
    dx[X_TH] = x[X_W]; dx[X_THX] = x[X_WX]; dx[X_WX] = 0;
    dx[X_V] = P->Rs > 0 ? (fmax(0, (P->Vs - V) / P->Rs) - (va * x[X_IA] + vb * x[X_IB]) / V) / P->C : 0;
    if (P->n > 0) {
        double p = x[X_TH] / P->n, tw = p + P->Aper * sin(P->Nper * p) - x[X_THX], dz = tw > P->b / 2 ? tw - P->b / 2 : tw < -P->b / 2 ? tw + P->b / 2 : 0;
        double slope = P->Aper * P->Nper * cos(P->Nper * p);
        double spring = P->k * dz, damper = 2 * P->zeta * sqrt(P->k * P->Jx) * (x[X_W] / P->n * (1 + slope) - x[X_WX]);
        tm = spring + (P->b == 0 ? damper : between(damper, -fabs(spring), fabs(spring)));
        net[1] = tm + P->Timb * cos(P->lat) * sin(x[X_THX]) - P->Bx * x[X_WX];
        if (P->Tcx == 0 || fx != 0) dx[X_WX] = (net[1] - fx * P->Tcx) / P->Jx;
        loss = fabs(tm) / P->n;
        back_torque = tm / P->n * (1 + slope);
    }
    double drive = loss * (1 / P->etad - 1), back = loss * (1 - P->etab);
    net[0] = Te - P->Bm * x[X_W] - P->Dd * (x[X_W] - wc) - back_torque - load;
    lim[0] = P->Tcm + (tm > 0 ? drive : back);                     /* against turning forward */
    lim[1] = P->Tcm + (tm > 0 ? back : drive);                     /* against turning backward */
    int rough = P->Tcm > 0 || P->etad < 1;
    dx[X_W] = rough && fs == 0 ? 0 : (net[0] - (fs > 0 ? lim[0] : fs < 0 ? -lim[1] : 0)) / P->J;
}

/* One step; where a rubbing body would turn back within it, the step is cut at the instant its speed is zero (by secants). */
static void rk4(double t, double h, const double *x, int full, double quarter, double fs, double fx, double *out)
{
    double k[4][NX], y[NX], net[2], lim[2];
    static const double at[4] = { 0, 0.5, 0.5, 1 };
    memcpy(y, x, sizeof y);
    for (int s = 0; s < 4; s++) {
        if (s) for (int i = 0; i < NX; i++) y[i] = x[i] + at[s] * h * k[s - 1][i];
        field(t + at[s] * h, y, full, quarter, fs, fx, k[s], net, lim);
    }
    for (int i = 0; i < NX; i++) out[i] = x[i] + h / 6 * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
}

static void step(double t, double h, double *x, int full, double quarter)
{
    int rough[2] = { P->Tcm > 0 || P->etad < 1, P->n > 0 && P->Tcx > 0 };
    static const int state[2] = { X_W, X_WX };
    for (int guard = 0; h > 0 && guard < 20; guard++) {
        double net[2] = { 0 }, lim[2], end[NX], k[NX], f[2] = { sgn(x[X_W]), sgn(x[X_WX]) }, cut = h;
        field(t, x, full, quarter, f[0], f[1], k, net, lim);
        if (f[0] == 0) f[0] = net[0] > lim[0] ? 1 : net[0] < -lim[1] ? -1 : 0;
        if (f[1] == 0) f[1] = fabs(net[1]) > P->Tcx ? sgn(net[1]) : 0;
        rk4(t, h, x, full, quarter, f[0], f[1], end);
        for (int body = 0; body < 2; body++) {
            int i = state[body];
            if (!rough[body] || x[i] * f[body] <= 0 || end[i] * f[body] >= 0) continue;
            double lo = 0, hi = h, vlo = x[i], vhi = end[i], y[NX];
            for (int it = 0; it < 6 && hi - lo > 1e-15; it++) {
                double mid = lo + (hi - lo) * vlo / (vlo - vhi);
                rk4(t, mid, x, full, quarter, f[0], f[1], y);
                if (y[i] * f[body] > 0) { lo = mid; vlo = y[i]; } else { hi = mid; vhi = y[i]; }
                if (y[i] == 0) break;
            }
            if (hi < cut) cut = hi;
        }
        if (cut < h) rk4(t, cut, x, full, quarter, f[0], f[1], end);
        memcpy(x, end, sizeof end);
        for (int body = 0; body < 2; body++)
            if (rough[body] && x[state[body]] * f[body] <= 0) x[state[body]] = 0;
        t += cut;
        h -= cut;
    }
}

static int ascending(const void *a, const void *b) { return (int)sgn(*(const double *)a - *(const double *)b); }

/* All times at which the command changes form, and the samples. Edges by bisection on the plan. */
static int breaks(const Case *c, double **out)
{
    int n = 0, room = 200000;
    double *b = malloc(room * sizeof *b), thc, wc, t = 0;
    for (int i = 0; i < c->nsample; i++) b[n++] = c->ts[i];
    for (int i = 0; i < P->npiece; i++) {
        b[n++] = P->piece[i].t;
        if (P->changeover > 0 && P->piece[i].a != 0) b[n++] = P->piece[i].t + (P->changeover - P->piece[i].w) / P->piece[i].a;
    }
    if (P->load_max > 0) { b[n++] = P->load_t0; b[n++] = P->load_t0 + P->load_max / P->load_rate; }
    b[n++] = P->tend;
    double last;
    plan(P->tend, &last, &wc);
    plan(0, &thc, &wc);
    for (double q = floor(thc * P->Nr / M_PI_2) + 1; P->changeover >= 0 && P->freeze_quadrant < 0 && q * M_PI_2 / P->Nr < last && n < room; q++) {
        double lo = t, hi = P->tend;
        for (int i = 0; i < 80; i++) {
            plan((lo + hi) / 2, &thc, &wc);
            if (thc * P->Nr < q * M_PI_2) lo = (lo + hi) / 2; else hi = (lo + hi) / 2;
        }
        b[n++] = t = hi;
    }
    qsort(b, n, sizeof *b, ascending);
    *out = b;
    return n;
}

int main(int argc, char **argv)
{
    if (argc != 4) { fprintf(stderr, "usage: %s DATADIR CASE STEP_S\n", argv[0]); return 2; }
    Case c = { 0 };
    for (int i = 0; i < case_count(); i++) { c = case_get(i); if (!strcmp(c.name, argv[2])) break; }
    P = &c.p;
    char path[512], line[2048];
    snprintf(path, sizeof path, "%s/%s.csv", argv[1], c.name);
    FILE *f = fopen(path, "r");
    if (!f) { perror(path); return 1; }
    while (fgets(line, sizeof line, f) && line[0] == '#') ;
    double *b, h = atof(argv[3]), thc, wc, x[NX] = { P->ia0, P->ib0 }, worst[6] = { 0 }, big[6] = { 0 };
    int n = breaks(&c, &b), is = 0, axis = P->n > 0, stop = 0;
    plan(0, &thc, &wc);
    x[X_TH] = thc + P->d0; x[X_V] = P->Vs;
    for (int i = 0; i + 1 < n && !stop; i++) {
        double t = b[i], span = b[i + 1] - b[i];
        if (b[i] < 0 || b[i + 1] > P->tend) continue;
        plan(t + span / 2, &thc, &wc);
        int full = P->changeover == 0 || (P->changeover > 0 && fabs(wc) > P->changeover), m = (int)ceil(span / h);
        double quarter = P->freeze_quadrant >= 0 ? (P->freeze_quadrant + 0.5) * M_PI_2 : (floor(thc * P->Nr / M_PI_2) + 0.5) * M_PI_2;
        for (int k = 0; k < m; k++) {
            step(t + k * span / m, span / m, x, full, quarter);
            if (c.stop_when_lost) {
                double now = t + (k + 1) * span / m;
                plan(now, &thc, &wc);
                if (fabs(P->Nr * (x[X_TH] - thc)) > M_PI) {
                    printf("%s step %.1e s: lost sync at %.8f s, load torque %.8f N m\n", c.name, h, now, P->load_rate * (now - P->load_t0));
                    stop = 1;
                    break;
                }
            }
        }
        if (is < c.nsample && b[i + 1] == c.ts[is]) {
            plan(b[i + 1], &thc, &wc);
            double mine[6] = { x[X_TH] - thc, x[X_W], x[X_IA], x[X_IB], axis ? (x[X_THX] - thc / P->n) * 648000 / M_PI : 0, x[X_WX] }, v[16] = { 0 };
            if (!fgets(line, sizeof line, f)) break;
            int j = 0;
            for (char *q = strtok(line, ","); q && j < 16; q = strtok(NULL, ",")) v[j++] = atof(q);
            const double stored[6] = { v[2], v[4], v[5], v[6], axis ? v[7] : 0, axis ? v[8] : 0 };
            for (int k = 0; k < 6; k++) { worst[k] = fmax(worst[k], fabs(mine[k] - stored[k])); big[k] = fmax(big[k], fabs(stored[k])); }
            while (is < c.nsample && c.ts[is] <= b[i + 1]) is++;
        }
    }
    printf("%s step %.1e s, %d samples: greatest difference: motor angle %.1e of %.2e rad, speed %.1e of %.2e rad/s, currents %.1e, %.1e A",
        c.name, h, is, worst[0], big[0], worst[1], big[1], worst[2], worst[3]);
    if (axis) printf(", axis error %.1e of %.3g arcsec, axis speed %.1e of %.2e rad/s", worst[4], big[4], worst[5], big[5]);
    printf("\n");
    free(b);
    fclose(f);
    return 0;
}
