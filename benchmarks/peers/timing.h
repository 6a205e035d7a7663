#ifndef PEERS_TIMING_H
#define PEERS_TIMING_H
#include <time.h>
/* Time on the clock, s. */
static inline double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}
/* Processor time of this process, s: the turns of other programs on its core are not in it. */
static inline double used(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}
#endif
