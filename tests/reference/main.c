/* Runs reference cases and writes their files: reference CASE OUTDIR. */
#include "cases.h"
#include "write.h"
#include <stdio.h>
#include <string.h>
#include <time.h>

static Runs runs;

static double wall(void)
{
    struct timespec s;
    clock_gettime(CLOCK_MONOTONIC, &s);
    return s.tv_sec + 1e-9 * s.tv_nsec;
}

int main(int argc, char **argv)
{
    if (argc != 3) { fprintf(stderr, "usage: %s CASE OUTDIR\n", argv[0]); return 2; }
    for (int i = 0; i < case_count(); i++) {
        Case c = case_get(i);
        if (strcmp(c.name, argv[1])) continue;
        int slow = c.name[0] == 'F';
        runs.tol[RUN_MAIN] = slow ? 1e-10 : 1e-11;
        runs.tol[RUN_TIGHT] = 0.1 * runs.tol[RUN_MAIN];
        runs.tol[RUN_LOOSE] = 10 * runs.tol[RUN_MAIN];
        runs.tol[RUN_BDF] = slow ? 0 : 0.1 * runs.tol[RUN_MAIN];    /* 0: not run */
        for (int k = 0; k < NRUN; k++) {
            if (runs.tol[k] == 0) continue;
            double t0 = wall();
            hybrid_run(&c.p, runs.tol[k], k == RUN_BDF, c.nsample, c.ts, c.stop_when_lost, &runs.r[k]);
            printf("%s tol %.0e %s: %.2f s, %ld steps, energy residual %.1e of %.4g J, %ld unforeseen switches\n", c.name, runs.tol[k],
                k == RUN_BDF ? "BDF" : "Adams", wall() - t0, runs.r[k].steps, runs.r[k].energy_residual, runs.r[k].energy_in, runs.r[k].missed);
            fflush(stdout);
        }
        write_samples(argv[2], &c, &runs);
        write_scalars(argv[2], &c, &runs);
        if (!slow && c.events) write_events(argv[2], &c, &runs);
        return 0;
    }
    fprintf(stderr, "no case %s\n", argv[1]);
    return 2;
}
