/* The benchmark case: parameters of one axis, its plan, and the times at which its drive changes mode. SI, radians. */
#ifndef PEERS_CASE_H
#define PEERS_CASE_H

/* Microsteps a full step; so many that the command is as good as not quantised where errors are compared with a solver's. A power of two. */
#ifndef MICROSTEPS
#define MICROSTEPS 64
#endif
enum { BLOCK = 16, MAX_PIECES = 4, MAX_MODES = 4 };

typedef struct {
    /* motor and drive */
    double teeth, km, detent, resistance, inductance, rotor_inertia, rotor_viscous, rotor_coulomb, volts, current, fraction, regulator, changeover;
    /* train and axis */
    double worm_ratio, wheel_ratio, stiffness, mesh_damping, half_backlash, loss_driving, loss_back, clutch, periodic;
    double axis_inertia, axis_viscous, axis_coulomb, gravity;
    /* torque pulses at the rotor; 0 when off */
    double probe;
} Axis;

/* Shaft angle P + s (V + s A/2) in each piece, s from its start. */
typedef struct {
    int pieces, modes;
    double start[MAX_PIECES], position[MAX_PIECES], velocity[MAX_PIECES], half_acceleration[MAX_PIECES];
    double slew_seconds;
    double mode_time[MAX_MODES]; int mode_full[MAX_MODES];
} Plan;

/* imbalance: N m, positive helps the motion of the benchmark's slew. */
Axis nominal_axis(double imbalance);
/* A slew at a rate at the axis (rad/s) with ramps of a given time (s). */
Plan slew_plan(const Axis *a, double distance, double rate, double ramp);

static inline double plan_position(const Plan *restrict p, double seconds, int *restrict cursor)
{
    while (*cursor + 1 < p->pieces && seconds >= p->start[*cursor + 1]) ++*cursor;
    int i = *cursor;
    double s = seconds - p->start[i];
    return p->position[i] + s * (p->velocity[i] + s * p->half_acceleration[i]);
}
#endif
