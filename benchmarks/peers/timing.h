#ifndef PEERS_TIMING_H
#define PEERS_TIMING_H
#include <time.h>
static inline double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}
#endif
