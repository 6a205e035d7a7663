/* The benchmark slew for a team of lanes that differ a little in load, friction, torque and current: ns per step and lane. See README.md. */
#include "lanes.h"
#include "timing.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Lanes 0 and 1 are the two cases of the scalar program; the others lie about them. */
static Axis lane_axis(int lane)
{
    Axis a = nominal_axis(lane == 1 ? -4.0 : 4.0);
    if (lane < 2) return a;
    double u = lane % 16 / 16.0, x = lane % 7 / 7.0;
    a = nominal_axis(-4.0 + 8.0 * u);
    a.axis_inertia = 5.5 + x;
    a.mesh_damping = 2.0 * 0.05 * sqrt(a.stiffness * a.axis_inertia);
    a.axis_coulomb = 0.7 + 0.2 * u;
    a.rotor_coulomb = 0.004 + 0.003 * x;
    a.km *= 0.97 + 0.06 * u;
    a.current *= 1.02 - 0.04 * x;
    return a;
}

int main(int argc, char **argv)
{
    int states = argc > 1 && !strcmp(argv[1], "states"), vectors = argc > 1 && !states ? atoi(argv[1]) : 4;
    const double h = 50e-6, samples[] = { 0.5, 2, 8, 16, 28, 31, 32, 35 };
    static Microsteps table;
    microsteps_fill(&table);
    Axis a = nominal_axis(4.0);
    Plan p = slew_plan(&a, 90 * (M_PI / 180), 3 * (M_PI / 180), 2);
    Team *t = team_create(&a, h, vectors);
    for (int lane = 0; lane < vectors * WIDTH; lane++) { Axis x = lane_axis(lane); team_set(t, lane, &x); }
    Commander c;
    commander_start(&c, &a, &p, &table, h);
    double begin = used();
    /* Timed as far as a batch that asks for the outcome alone: 0.3 s beyond the slew. */
    if (!states) while (c.index * h < p.slew_seconds + 0.3) team_block(t, &c);
    for (int i = 0; states && i < 8; i++) {
        while (c.index * h < samples[i]) team_block(t, &c);
        for (int lane = 0; lane < 2; lane++) {
            LaneView s = team_view(t, lane);
            printf("{\"state\":\"%s\",\"seconds\":%.17g,\"rotor\":%.17g,\"rotor_speed\":%.17g,\"axis\":%.17g,\"axis_speed\":%.17g,\"ia\":%.17g,\"ib\":%.17g}\n",
                lane ? "opposing" : "helping", c.index * h, s.rotor, s.rotor_speed, s.axis, s.axis_speed, s.ia, s.ib);
        }
    }
    double seconds = used() - begin;
    int lost = 0;
    for (int lane = 0; lane < vectors * WIDTH; lane++) {
        LaneView s = team_view(t, lane);
        lost += !(fabs(c.teeth * (s.rotor - c.plan_now)) < 1.5 * M_PI) || s.slip != 0;
    }
    if (!states) printf("{\"what\":\"lanes\",\"unit\":\"ns/step/lane\",\"value\":%.4f,\"width\":%d,\"lanes\":%d,\"lost\":%d,\"check\":%.17g}\n",
        1e9 * seconds / c.index / (vectors * WIDTH), WIDTH, vectors * WIDTH, lost, team_view(t, 0).axis);
    team_free(t);
    return 0;
}
