/* Integration of the hybrid model with CVODE: every switch is located as a root and the solver restarted there. */
#ifndef HYBRID_H
#define HYBRID_H
#include "model.h"

enum { MAX_SAMPLES = 64, MAX_EVENTS = 400, NPEAK = 4 };
typedef struct { double t; const char *name; double y[NEQ]; double x, tm; } Event;
typedef struct {
    int nsample; double ts[MAX_SAMPLES], y[MAX_SAMPLES][NEQ]; Now now[MAX_SAMPLES];
    int nevent; Event event[MAX_EVENTS]; long events_total, edges, saturations, missed, steps, rhs;
    double last_shaft_stick, last_axis_stick;
    double peak[NPEAK], peak_t[NPEAK];                          /* greatest |D|, |DX|, |W|, |IA| and when */
    double sat_time, energy_residual, energy_in;
    double t_lost, TL_lost;                                     /* when |load angle| first exceeds pi, or NaN */
} Result;

/* tol: relative tolerance, and absolute tolerance in units of each state's scale. bdf: 0 Adams, 1 BDF. */
void hybrid_run(const Par *p, double tol, int bdf, int nsample, const double *ts, int stop_when_lost, Result *r);
#endif
