/* The equations of the reference solutions: two-phase hybrid stepper, averaged chopper, lossy reduction
   with backlash, axis with gravity. SI units and radians. The laws are written out in README.md. */
#ifndef MODEL_H
#define MODEL_H

#ifdef SPEED_ONLY                                               /* timed runs: no supply sag, no energy balance, no peaks */
enum { IA, IB, D, W, DX, WX, NEQ };
#else
enum { IA, IB, D, W, DX, WX, VBUS, EIN, EDISS, NEQ };          /* states; D = th - thc, DX = thx - thc/n */
#endif
enum { G_AHI, G_ALO, G_BHI, G_BLO,                              /* u - V, u + V of each phase */
       G_RGAP, G_LGAP, G_RZERO, G_RDBL, G_LZERO, G_LDBL,        /* mesh contact and its damper limit */
       G_BUS, G_LOST, NSIGN,                                    /* supply diode; |load angle| = pi */
       G_SHAFT_A = NSIGN, G_SHAFT_B, G_AXIS_A, G_AXIS_B, NROOT };

typedef struct { double t, th, w, a; } Piece;                   /* plan from time t: th + w s + a s^2 / 2 */

typedef struct {
    /* motor */
    double Nr, R, L, Irated, I, Thold, Td, J, Bm, Tcm, Dd;
    /* drive */
    double Vs, tau, F, changeover;                              /* changeover: motor rad/s; <0 never, 0 always full step */
    double Rs, C;                                               /* supply sag; Rs = 0 means an ideal supply */
    /* external torque on the shaft, against positive motion: ramp from load_t0 at load_rate up to load_max */
    double load_t0, load_rate, load_max;
    /* transmission and axis; n = 0 means the motor alone */
    double n, k, zeta, b, etad, etab, Aper, Nper, Jx, Bx, Tcx, Timb, lat;
    /* plan */
    Piece piece[8]; int npiece; double tend;
    /* initial deviation states */
    double d0, ia0, ib0; int freeze_quadrant;                   /* >= 0: constant full-step command (case A) */
} Par;

typedef struct {                                                /* the discrete part of the hybrid state */
    int sgn[NSIGN];                                             /* sign of each switching function, flipped only at its located root */
    int shaft, axis;                                            /* -1, +1 slipping that way; 0 stuck */
    int full, quadrant, piece, loadphase;                       /* command */
} Mode;

typedef struct {                                                /* everything derived at one instant */
    double thc, wc, th, ea, eb, ua, ub, va, vb, iac, ibc, V, Te, x, xd, tc, tm, eprime, TL;
    double shaft_net, shaft_fp, shaft_fm, axis_net;             /* torque without friction; friction limits against + and - motion */
} Now;

double par_Km(const Par *p);
double par_c(const Par *p);
void plan_at(const Par *p, int piece, double t, double *thc, double *wc);
void evaluate(const Par *p, const Mode *m, double t, const double *y, Now *o);
void derivative(const Par *p, const Mode *m, double t, const double *y, double *yd);
void switching(const Par *p, const Mode *m, double t, const double *y, double *g);
double stored_energy(const Par *p, const Mode *m, double t, const double *y);
#endif
