#ifndef WRITE_H
#define WRITE_H
#include "cases.h"
enum { RUN_MAIN, RUN_TIGHT, RUN_LOOSE, RUN_BDF, NRUN };
typedef struct { double tol[NRUN]; Result r[NRUN]; } Runs;
void write_samples(const char *dir, const Case *c, const Runs *runs);
void write_scalars(const char *dir, const Case *c, const Runs *runs);
void write_events(const char *dir, const Case *c, const Runs *runs);
#endif
