/* The map: slew rate against opposing shaft torque, one team of lanes a column, columns shared out to threads. map [threads [step in us [grid file]]]. See README.md. */
#include "lanes.h"
#include "timing.h"
#include <pthread.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 100, ROWS = 100 };
enum { ARRIVES = '.', STALLS = '#', SLIPS = 'c' };

static const double degree = M_PI / 180, lost = 1.5 * M_PI, observe = 3.0;
static double step_seconds = 50e-6;
static Microsteps table;
static char grid[COLUMNS][ROWS];
static atomic_int next_column;
static atomic_long lane_steps;

static double column_rate(int column) { return (1 + 11.0 * column / (COLUMNS - 1)) * degree; }
static double row_torque(int row) { return 0.35 * row / (ROWS - 1); }

/* Fills the lanes behind the last live one with a copy of a live one, so that they do no harm. */
static void drop(Team *t, int *row_of, int *live, int lane)
{
    int last = --*live;
    if (lane != last) { team_move(t, lane, last); row_of[lane] = row_of[last]; }
    else if (last > 0) team_move(t, lane, 0);
    t->vectors = (*live + WIDTH - 1) / WIDTH;
}

static void run_column(int column)
{
    Axis a = nominal_axis(0);
    a.rotor_viscous = 3e-4;
    a.probe = 0.01 * 0.40;
    double rate = column_rate(column);
    Plan p = slew_plan(&a, rate * 31.5, rate, 0.5);
    Team *t = team_create(&a, step_seconds, (ROWS + WIDTH - 1) / WIDTH);
    int row_of[ROWS + WIDTH], live = ROWS;
    for (int row = 0; row < t->vectors * WIDTH; row++) {
        row_of[row] = row < ROWS ? row : ROWS - 1;
        a.rotor_coulomb = row_torque(row_of[row]);
        team_set(t, row, &a);
    }
    LaneState *before = aligned_alloc(64, t->vectors * sizeof *before);
    Commander c;
    commander_start(&c, &a, &p, &table, step_seconds);
    long steps = 0;
    memset(grid[column], ARRIVES, ROWS);
    while (live > 0 && c.index * step_seconds < p.slew_seconds + observe) {
        int resting = c.index * step_seconds >= p.slew_seconds;
        if (resting) memcpy(before, t->state, t->vectors * sizeof *before);
        team_block(t, &c);
        steps += (long)live * BLOCK;
        vd plan = all(c.teeth * c.plan_now);
        /* From the last vector to the first, so that a lane moved into a gap has been looked at. */
        for (int v = t->vectors - 1; v >= 0; v--) {
            const LaneState *s = &t->state[v];
            vd angle = nmad(all(0.5), s->rotor_speed, s->rotor) - plan;
            int out = any(above(size_of(angle), all(lost))) || any(differs(s->slip, all(0))) || any(differs(angle, angle));
            if (!out && !resting) continue;
            for (int i = WIDTH - 1; i >= 0; i--) {
                int lane = v * WIDTH + i;
                if (lane >= live) continue;
                /* A state that a block under a steady command leaves as it was stays so for good. */
                int still = resting;
                for (size_t j = 0; still && j < sizeof *s / sizeof(vd); j++) still = ((vd *)s)[j][i] == ((vd *)&before[v])[j][i];
                int slips = s->slip[i] != 0, stalls = !(fabs(angle[i]) <= lost);
                if (!still && !slips && !stalls) continue;
                if (!still) grid[column][row_of[lane]] = slips ? SLIPS : STALLS;
                if (resting && lane != live - 1)
                    for (size_t j = 0; j < sizeof *s / sizeof(vd); j++) ((vd *)&before[v])[j][i] = ((vd *)&before[(live - 1) / WIDTH])[j][(live - 1) % WIDTH];
                drop(t, row_of, &live, lane);
            }
        }
    }
    atomic_fetch_add(&lane_steps, steps);
    free(before);
    t->vectors = t->capacity;
    team_free(t);
}

static void *worker(void *unused)
{
    for (int column; (column = atomic_fetch_add(&next_column, 1)) < COLUMNS;) run_column(column);
    return unused;
}

int main(int argc, char **argv)
{
    int threads = argc > 1 ? atoi(argv[1]) : 1;
    if (argc > 2) step_seconds = atof(argv[2]) / 1e6;
    if (threads < 1 || threads > 64 || !(step_seconds > 0)) { fprintf(stderr, "usage: %s [threads, 1 to 64 [step in us [grid file]]]\n", argv[0]); return 2; }
    microsteps_fill(&table);
    double begin = now();
    pthread_t thread[64];
    for (int i = 1; i < threads; i++) if (pthread_create(&thread[i], NULL, worker, NULL)) { perror("thread"); return 1; }
    worker(NULL);
    for (int i = 1; i < threads; i++) pthread_join(thread[i], NULL);
    double seconds = now() - begin;
    int count[256] = { 0 };
    for (int i = 0; i < COLUMNS; i++) for (int j = 0; j < ROWS; j++) count[(unsigned char)grid[i][j]]++;
    printf("{\"what\":\"map\",\"unit\":\"s\",\"value\":%.4f,\"threads\":%d,\"step_us\":%g,\"arrives\":%d,\"stalls\":%d,\"slips\":%d,\"lane_steps\":%ld,\"ns_per_lane_step\":%.4f}\n",
        seconds, threads, step_seconds * 1e6, count[ARRIVES], count[STALLS], count[SLIPS], lane_steps, 1e9 * seconds * threads / lane_steps);
    if (argc > 3) {
        FILE *f = fopen(argv[3], "w");
        if (!f) { perror(argv[3]); return 1; }
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) fputc(grid[column][row], f);
            fputc('\n', f);
        }
        fclose(f);
    }
    return 0;
}
