/* Many axes that share a plan and a drive, WIDTH to a vector, stepped by blocks; they may differ in motor, friction, load and current. */
#ifndef PEERS_LANES_H
#define PEERS_LANES_H
#include "case.h"
#include "command.h"
#include "vec.h"

/* Electrical angle and axis angle half a step ahead, with speeds as angles in a step: now, and extrapolated to the middle of the coming step. */
typedef struct {
    vd rotor, rotor_speed, rotor_mid, axis, axis_speed, axis_mid, ia, ib, slip;
} LaneState;

/* Constants of a lane in those units. Loss: even = (driving + back)/2, odd = (driving - back)/2. */
typedef struct {
    vd current, emf, torque, detent, viscous, coulomb, even, odd, load;
    vd stiffness, damping, half_backlash, clutch, axis_scale, axis_viscous, axis_coulomb, gravity, periodic;
} LaneConstants;

/* Slow terms of a block: linear in the step's number. */
typedef struct { vd error, error_step, geared, load, gravity, gravity_step; } LaneSlow;

typedef struct {
    double h, teeth, inverse_worm, wheel, inverse_rotor_inertia, conductance, volts;
    Decay regulator, winding;
    double push_scale;                                             /* electrical angle in a step that 1 N m gives in a step */
} Shared;

typedef struct {
    int vectors, capacity;
    Shared shared;
    LaneState *state;
    LaneConstants *constants;
    LaneSlow *slow;
    Command command[BLOCK];
} Team;

Team *team_create(const Axis *common, double h, int vectors);
void team_free(Team *t);
/* State of a lane in SI: rotor, its speed, axis, its speed, both currents. */
typedef struct { double rotor, rotor_speed, axis, axis_speed, ia, ib, slip; } LaneView;
LaneView team_view(const Team *t, int lane);
void team_set(Team *t, int lane, const Axis *a);
/* Puts one lane in the place of another. */
void team_move(Team *t, int to, int from);
/* One block; the commands of its steps are taken from the commander first. */
void team_block(Team *t, Commander *c);
#endif
