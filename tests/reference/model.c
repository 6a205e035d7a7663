#include "model.h"
#include <math.h>

double par_Km(const Par *p) { return p->Thold / (M_SQRT2 * p->Irated); }
double par_c(const Par *p) { return 2 * p->zeta * sqrt(p->k * p->Jx); }

void plan_at(const Par *p, int i, double t, double *thc, double *wc)
{
    const Piece *q = &p->piece[i];
    double s = t - q->t;
    *thc = q->th + s * (q->w + 0.5 * q->a * s);
    *wc = q->w + q->a * s;
}

static double clamped(int hi, int lo, double u, double V) { return hi > 0 ? V : lo < 0 ? -V : u; }

/* The torque on the axis: spring tc, damper td = c xd with |td| <= |tc|, so tm lies between 0 and 2 tc. */
static double mesh(const Par *p, const Mode *m, double x, double xd, double *tc)
{
    const int *s = m->sgn;
    double half = 0.5 * p->b, c = par_c(p);
    if (p->b == 0) {                                            /* no play: both flanks touch, and the damper may pull */
        *tc = p->k * x;
        return *tc + c * xd;
    }
    *tc = 0;
    if (s[G_RGAP] > 0) {
        *tc = p->k * (x - half);
        return s[G_RZERO] < 0 ? 0 : s[G_RDBL] < 0 ? 2 * *tc : *tc + c * xd;
    }
    if (s[G_LGAP] < 0) {
        *tc = p->k * (x + half);
        return s[G_LZERO] > 0 ? 0 : s[G_LDBL] > 0 ? 2 * *tc : *tc + c * xd;
    }
    return 0;
}

void evaluate(const Par *p, const Mode *m, double t, const double *y, Now *o)
{
    double Km = par_Km(p);
    plan_at(p, m->piece, t, &o->thc, &o->wc);
    o->th = o->thc + y[D];
    double s = sin(p->Nr * o->th), c = cos(p->Nr * o->th);
    o->ea = -Km * y[W] * s;
    o->eb = Km * y[W] * c;
    if (m->full) {
        static const int sa[4] = { 1, -1, -1, 1 }, sb[4] = { 1, 1, -1, -1 };
        o->iac = p->F * p->I * sa[m->quadrant & 3];
        o->ibc = p->F * p->I * sb[m->quadrant & 3];
    } else {
        o->iac = p->I * cos(p->Nr * o->thc);
        o->ibc = p->I * sin(p->Nr * o->thc);
    }
#ifdef SPEED_ONLY
    o->V = p->Vs;
#else
    o->V = p->Rs > 0 ? y[VBUS] : p->Vs;
#endif
    o->ua = p->R * y[IA] + o->ea + p->L / p->tau * (o->iac - y[IA]);
    o->ub = p->R * y[IB] + o->eb + p->L / p->tau * (o->ibc - y[IB]);
    o->va = clamped(m->sgn[G_AHI], m->sgn[G_ALO], o->ua, o->V);
    o->vb = clamped(m->sgn[G_BHI], m->sgn[G_BLO], o->ub, o->V);
    o->Te = Km * (-y[IA] * s + y[IB] * c) - p->Td * sin(4 * p->Nr * o->th);
    o->TL = m->loadphase == 0 ? 0 : m->loadphase == 1 ? p->load_rate * (t - p->load_t0) : p->load_max;

    o->x = o->xd = o->tc = o->tm = o->eprime = o->axis_net = 0;
    double reaction = 0, fp = p->Tcm, fm = p->Tcm;
    if (p->n > 0) {
        double q = o->th / p->n;
        o->eprime = p->Aper * p->Nper * cos(p->Nper * q);
        o->x = y[D] / p->n - y[DX] + p->Aper * sin(p->Nper * q);
        o->xd = y[W] / p->n * (1 + o->eprime) - y[WX];
        o->tm = mesh(p, m, o->x, o->xd, &o->tc);
        reaction = o->tm / p->n * (1 + o->eprime);
        double drive = fabs(o->tm) / p->n * (1 / p->etad - 1), back = fabs(o->tm) / p->n * (1 - p->etab);
        fp += o->tm > 0 ? drive : back;
        fm += o->tm > 0 ? back : drive;
        double thx = y[DX] + o->thc / p->n;
        o->axis_net = o->tm + p->Timb * cos(p->lat) * sin(thx) - p->Bx * y[WX];
    }
    o->shaft_net = o->Te - p->Bm * y[W] - p->Dd * (y[W] - o->wc) - reaction - o->TL;
    o->shaft_fp = fp;
    o->shaft_fm = fm;
}

void derivative(const Par *p, const Mode *m, double t, const double *y, double *yd)
{
    Now o;
    evaluate(p, m, t, y, &o);
    for (int i = 0; i < NEQ; i++) yd[i] = 0;
    yd[IA] = (o.va - p->R * y[IA] - o.ea) / p->L;
    yd[IB] = (o.vb - p->R * y[IB] - o.eb) / p->L;
    yd[D] = y[W] - o.wc;
    double friction = m->shaft > 0 ? o.shaft_fp : m->shaft < 0 ? -o.shaft_fm : 0;
    int rubs = p->Tcm > 0 || p->etad < 1;
    yd[W] = rubs && m->shaft == 0 ? 0 : (o.shaft_net - friction) / p->J;
    if (p->n > 0) {
        yd[DX] = y[WX] - o.wc / p->n;
        yd[WX] = p->Tcx > 0 && m->axis == 0 ? 0 : (o.axis_net - m->axis * p->Tcx) / p->Jx;
    }
#ifndef SPEED_ONLY
    if (p->Rs > 0) {
        double in = m->sgn[G_BUS] > 0 ? (p->Vs - y[VBUS]) / p->Rs : 0;
        yd[VBUS] = (in - (o.va * y[IA] + o.vb * y[IB]) / y[VBUS]) / p->C;
    }
    yd[EIN] = o.va * y[IA] + o.vb * y[IB];
    yd[EDISS] = p->R * (y[IA] * y[IA] + y[IB] * y[IB]) + p->Bm * y[W] * y[W] + p->Dd * (y[W] - o.wc) * y[W] + friction * y[W]
        + o.TL * y[W] + (o.tm - o.tc) * o.xd + p->Bx * y[WX] * y[WX] + m->axis * p->Tcx * y[WX];
#endif
}

void switching(const Par *p, const Mode *m, double t, const double *y, double *g)
{
    Now o;
    evaluate(p, m, t, y, &o);
    g[G_AHI] = o.ua - o.V; g[G_ALO] = o.ua + o.V;
    g[G_BHI] = o.ub - o.V; g[G_BLO] = o.ub + o.V;
    for (int i = G_RGAP; i <= G_LDBL; i++) g[i] = 1;
    if (p->n > 0) {
        double r = o.x - 0.5 * p->b, l = o.x + 0.5 * p->b, v = par_c(p) / p->k * o.xd;
        g[G_RGAP] = r; g[G_LGAP] = l;
        g[G_RZERO] = r + v; g[G_RDBL] = r - v;
        g[G_LZERO] = l + v; g[G_LDBL] = l - v;
    }
#ifdef SPEED_ONLY
    g[G_BUS] = 1;
#else
    g[G_BUS] = p->Rs > 0 ? p->Vs - y[VBUS] : 1;
#endif
    g[G_LOST] = fabs(p->Nr * y[D]) - M_PI;
    int rubs = p->Tcm > 0 || p->etad < 1;
    g[G_SHAFT_A] = !rubs ? -1 : m->shaft ? y[W] : o.shaft_net - o.shaft_fp;
    g[G_SHAFT_B] = !rubs || m->shaft ? 1 : o.shaft_net + o.shaft_fm;
    int axis = p->n > 0 && p->Tcx > 0;
    g[G_AXIS_A] = !axis ? -1 : m->axis ? y[WX] : o.axis_net - p->Tcx;
    g[G_AXIS_B] = !axis || m->axis ? 1 : o.axis_net + p->Tcx;
}

double stored_energy(const Par *p, const Mode *m, double t, const double *y)
{
    Now o;
    evaluate(p, m, t, y, &o);
    double e = 0.5 * p->L * (y[IA] * y[IA] + y[IB] * y[IB]) + 0.5 * p->J * y[W] * y[W] - p->Td * cos(4 * p->Nr * o.th) / (4 * p->Nr);
    if (p->n > 0)
        e += 0.5 * p->Jx * y[WX] * y[WX] + 0.5 * o.tc * o.tc / p->k + p->Timb * cos(p->lat) * cos(y[DX] + o.thc / p->n);
    return e;
}
