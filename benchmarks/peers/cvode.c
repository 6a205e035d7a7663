/* The benchmark slew on SUNDIALS CVODE, with events: the model of tests/reference without what only checks it (SPEED_ONLY). See README.md.
   table: error against the stored tight solution, and time, over a ladder of tolerances; else one timed run. */
#include "../../tests/reference/cases.h"
#include "tight.h"
#include "timing.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static Errors errors(const Result *r, const Sample *tight, int n)
{
    Errors e = { 0 };
    for (int i = 0; i < n && i < r->nsample; i++) error_take(&e, &tight[i], r->y[i][D], r->y[i][DX], r->y[i][IA], r->y[i][IB]);
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
    double begin = used();
    hybrid_run(&c->p, tolerance, bdf, c->nsample, c->ts, 0, r);
    return used() - begin;
}

int main(int argc, char **argv)
{
    static Result r;
    static Sample tight[MAX_TIGHT];
    int table = argc == 4 && !strcmp(argv[1], "table"), bdf = argc > 1 && !strcmp(argv[1], "bdf");
    if (!table && !(argc == 4 && (bdf || !strcmp(argv[1], "adams")))) {
        fprintf(stderr, "usage: %s table helping|opposing STORED_SOLUTION | adams|bdf helping|opposing TOLERANCE\n", argv[0]);
        return 2;
    }
    Case c = slew(strcmp(argv[2], "opposing") ? "F_helping" : "F_opposing");
    if (!table) {
        double seconds = timed(&c, atof(argv[3]), bdf, &r);
        printf("{\"what\":\"cvode %s %s\",\"unit\":\"s/s\",\"value\":%.6g,\"tolerance\":%s,\"steps\":%ld}\n", argv[1], argv[2], seconds / c.p.tend, argv[3], r.steps);
        return 0;
    }
    int n = tight_read(argv[3], tight);
    if (n == 0) return 1;
    for (bdf = 0; bdf < 2; bdf++)
        for (int k = 6; k <= 10; k++) {
            double tolerance = pow(10, -0.5 * k), seconds = timed(&c, tolerance, bdf, &r);
            Errors e = errors(&r, tight, n);
            printf("{\"what\":\"cvode %s\",\"case\":\"%s\",\"tolerance\":%.3g,\"value\":%.6g,\"axis_arcsec\":%.3g,\"end_arcsec\":%.3g,\"motor_rad\":%.3g,\"current_A\":%.3g,\"steps\":%ld,\"rhs\":%ld,\"missed\":%ld}\n",
                bdf ? "bdf" : "adams", argv[2], tolerance, seconds / c.p.tend, e.axis, e.end, e.motor, e.current, r.steps, r.rhs, r.missed);
            fflush(stdout);
        }
    return 0;
}
