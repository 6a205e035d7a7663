/* The benchmark slew on SUNDIALS CVODE, with events: the model of tests/reference, without what only checks it. See README.md.
   cvode table [imbalance]: errors against a tight run, and time, over a ladder of tolerances; cvode METHOD TOLERANCE [imbalance]: one timed run. */
#include "../../tests/reference/cases.h"
#include "timing.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double arcsecond = M_PI / 648000;

/* Worst differences from a tight run: axis error along the way and at the end (arcsec), motor angle (rad), currents (A). */
typedef struct { double axis, end, motor, current; } Errors;

static Errors errors(const Result *r, const Result *tight)
{
    Errors e = { 0 };
    for (int i = 0; i < tight->nsample; i++) {
        double axis = fabs(r->y[i][DX] - tight->y[i][DX]) / arcsecond;
        e.axis = fmax(e.axis, axis);
        e.motor = fmax(e.motor, fabs(r->y[i][D] - tight->y[i][D]));
        e.current = fmax(e.current, fmax(fabs(r->y[i][IA] - tight->y[i][IA]), fabs(r->y[i][IB] - tight->y[i][IB])));
        e.end = axis;
    }
    return e;
}

static Case slew(const char *name)
{
    for (int i = 0; i < case_count(); i++) {
        Case c = case_get(i);
        if (!strcmp(c.name, name)) return c;
    }
    fprintf(stderr, "no case %s\n", name);
    exit(2);
}

static double timed(const Case *c, double tolerance, int bdf, Result *r)
{
    double begin = now();
    hybrid_run(&c->p, tolerance, bdf, c->nsample, c->ts, 0, r);
    return now() - begin;
}

int main(int argc, char **argv)
{
    static Result tight, r;
    int table = argc > 1 && !strcmp(argv[1], "table"), bdf = argc > 1 && !strcmp(argv[1], "bdf");
    if (!table && !bdf && (argc < 3 || strcmp(argv[1], "adams"))) {
        fprintf(stderr, "usage: %s table [helping|opposing] | adams TOLERANCE [helping|opposing] | bdf TOLERANCE [helping|opposing]\n", argv[0]);
        return 2;
    }
    const char *which = argc > 3 - table ? argv[3 - table] : "helping";
    Case c = slew(strcmp(which, "opposing") ? "F_helping" : "F_opposing");
    if (!table) {
        double seconds = timed(&c, atof(argv[2]), bdf, &r);
        printf("{\"what\":\"cvode %s\",\"unit\":\"s/simulated s\",\"value\":%.6g,\"tolerance\":%s,\"steps\":%ld,\"axis\":%.17g}\n",
            argv[1], seconds / c.p.tend, argv[2], r.steps, r.y[r.nsample - 1][DX]);
        return 0;
    }
    timed(&c, 1e-10, 0, &tight);
    for (int i = 0; i < tight.nsample; i++) printf("{\"tight\":\"%s\",\"seconds\":%.17g,\"motor\":%.17g,\"axis\":%.17g,\"ia\":%.17g,\"ib\":%.17g}\n", which, tight.ts[i], tight.y[i][D], tight.y[i][DX], tight.y[i][IA], tight.y[i][IB]);
    for (bdf = 0; bdf < 2; bdf++)
        for (int k = 4; k <= 16; k++) {
            double tolerance = pow(10, -0.5 * k), seconds = timed(&c, tolerance, bdf, &r);
            Errors e = errors(&r, &tight);
            printf("{\"what\":\"cvode %s\",\"case\":\"%s\",\"tolerance\":%.3g,\"value\":%.6g,\"axis_arcsec\":%.3g,\"end_arcsec\":%.3g,\"motor_rad\":%.3g,\"current_A\":%.3g,\"steps\":%ld,\"rhs\":%ld,\"missed\":%ld}\n",
                bdf ? "bdf" : "adams", which, tolerance, seconds / c.p.tend, e.axis, e.end, e.motor, e.current, r.steps, r.rhs, r.missed);
            fflush(stdout);
        }
    return 0;
}
