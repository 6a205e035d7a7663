#ifndef CASES_H
#define CASES_H
#include "hybrid.h"
typedef struct { const char *name, *title; Par p; int nsample; double ts[MAX_SAMPLES]; int stop_when_lost, events; } Case;
int case_count(void);
Case case_get(int i);
#endif
