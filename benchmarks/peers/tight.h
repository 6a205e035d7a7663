/* The stored solution of a tight solver run at sample times (tests/reference/data): motor and axis less plan, rad; currents, A. */
#ifndef PEERS_TIGHT_H
#define PEERS_TIGHT_H
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { MAX_TIGHT = 64 };
typedef struct { double seconds, motor, axis, ia, ib; } Sample;
/* Worst differences: axis along the way and at the end (arcsec), motor (rad), currents (A). */
typedef struct { double axis, end, motor, current; } Errors;

static inline void error_take(Errors *e, const Sample *tight, double motor, double axis, double ia, double ib)
{
    e->end = fabs(axis - tight->axis) * (648000 / M_PI);
    e->axis = fmax(e->axis, e->end);
    e->motor = fmax(e->motor, fabs(motor - tight->motor));
    e->current = fmax(e->current, fmax(fabs(ia - tight->ia), fabs(ib - tight->ib)));
}

/* Number of samples, or 0 with a message. */
static inline int tight_read(const char *file, Sample tight[MAX_TIGHT])
{
    char line[1024];
    int n = 0;
    FILE *f = fopen(file, "r");
    if (!f) { perror(file); return 0; }
    while (n < MAX_TIGHT && fgets(line, sizeof line, f)) {
        Sample *s = &tight[n];
        double arcsec;
        if (sscanf(line, "%lf,%*f,%lf,%*f,%*f,%lf,%lf,%lf", &s->seconds, &s->motor, &s->ia, &s->ib, &arcsec) != 5) continue;
        s->axis = arcsec * (M_PI / 648000);
        n++;
    }
    fclose(f);
    if (n == 0) fprintf(stderr, "%s holds no samples\n", file);
    return n;
}
#endif
