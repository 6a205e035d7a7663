#include "write.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#define ARCSEC (M_PI / 180 / 3600)
typedef struct { const char *name; double (*of)(const Case *, const Result *, int); int axis, sag; } Column;

static double c_thc(const Case *c, const Result *r, int i) { (void)c; return r->now[i].thc; }
static double c_d(const Case *c, const Result *r, int i) { (void)c; return r->y[i][D]; }
static double c_w(const Case *c, const Result *r, int i) { (void)c; return r->y[i][W]; }
static double c_ia(const Case *c, const Result *r, int i) { (void)c; return r->y[i][IA]; }
static double c_ib(const Case *c, const Result *r, int i) { (void)c; return r->y[i][IB]; }
static double c_load(const Case *c, const Result *r, int i) { return c->p.Nr * r->y[i][D]; }
static double c_TL(const Case *c, const Result *r, int i) { (void)c; return r->now[i].TL; }
static double c_bus(const Case *c, const Result *r, int i) { (void)c; return r->y[i][VBUS]; }
static double c_dx(const Case *c, const Result *r, int i) { (void)c; return r->y[i][DX] / ARCSEC; }
static double c_wx(const Case *c, const Result *r, int i) { (void)c; return r->y[i][WX]; }
static double c_x(const Case *c, const Result *r, int i) { (void)c; return r->now[i].x / ARCSEC; }
static double c_tm(const Case *c, const Result *r, int i) { (void)c; return r->now[i].tm; }

static const Column column[] = {
    { "planned_motor_angle_rad", c_thc, 0, 0 }, { "motor_angle_minus_planned_rad", c_d, 0, 0 }, { "load_angle_electrical_rad", c_load, 0, 0 },
    { "motor_speed_rad_per_s", c_w, 0, 0 }, { "current_a_A", c_ia, 0, 0 }, { "current_b_A", c_ib, 0, 0 }, { "load_torque_Nm", c_TL, 0, 0 },
    { "bus_voltage_V", c_bus, 0, 1 }, { "axis_error_arcsec", c_dx, 1, 0 }, { "axis_speed_rad_per_s", c_wx, 1, 0 },
    { "twist_arcsec", c_x, 1, 0 }, { "mesh_torque_Nm", c_tm, 1, 0 },
};
enum { NCOLUMN = sizeof column / sizeof *column };

static int shown(const Case *c, const Column *q)
{
    if (q->sag) return c->p.Rs > 0;
    if (q->of == c_TL) return c->p.load_max > 0;
    return !q->axis || c->p.n > 0;
}

static FILE *open_file(const char *dir, const Case *c, const char *suffix)
{
    char path[512];
    snprintf(path, sizeof path, "%s/%s%s.csv", dir, c->name, suffix);
    FILE *f = fopen(path, "w");
    if (!f) { perror(path); exit(1); }
    return f;
}

static void head(FILE *f, const Case *c, const Runs *u)
{
    const Par *p = &c->p;
    fprintf(f, "# case %s: %s\n# made by tests/reference/make.sh; equations and signs in tests/reference/README.md\n", c->name, c->title);
    fprintf(f, "# solver: SUNDIALS 6.4.1 CVODE, Adams, every switch located as a root; relative tolerance %.0e\n", u->tol[RUN_MAIN]);
#define V(name, unit, value) fprintf(f, *(unit) ? "# %s = %.15g %s\n" : "# %s = %.15g\n", name, value, unit)
    V("rotor_teeth", "", p->Nr); V("resistance", "ohm", p->R); V("inductance", "H", p->L); V("rated_current", "A", p->Irated); V("current", "A", p->I);
    V("holding_torque", "N m", p->Thold); V("torque_constant_Km", "N m/A", par_Km(p)); V("detent_torque", "N m", p->Td);
    V("rotor_inertia_with_any_load", "kg m2", p->J); V("motor_viscous", "N m s/rad", p->Bm); V("motor_coulomb", "N m", p->Tcm);
    V("rotor_damping_relative_to_plan", "N m s/rad", p->Dd); V("supply", "V", p->Vs); V("chopper_time_constant", "s", p->tau);
    V("full_step_current_fraction", "", p->F);
    if (p->changeover < 0) fprintf(f, "# changeover: never full-stepping\n");
    else if (p->changeover == 0) fprintf(f, "# changeover: always full-stepping\n");
    else V("changeover_motor_speed", "rad/s", p->changeover);
    if (p->Rs > 0) { V("supply_resistance", "ohm", p->Rs); V("bus_capacitance", "F", p->C); V("bus_voltage_at_start", "V", p->Vs); }
    if (p->load_max > 0) { V("load_torque_ramp_start", "s", p->load_t0); V("load_torque_ramp", "N m/s", p->load_rate); V("load_torque_limit", "N m", p->load_max); }
    if (p->n > 0) {
        V("ratio", "", p->n); V("stiffness_at_axis", "N m/rad", p->k); V("damping_ratio", "", p->zeta); V("mesh_damping", "N m s/rad", par_c(p));
        V("backlash_total", "arcsec", p->b / ARCSEC); V("efficiency_driving", "", p->etad); V("efficiency_back_driving", "", p->etab);
        V("periodic_error_amplitude", "arcsec", p->Aper / ARCSEC); V("periodic_error_periods_per_turn", "", p->Nper); V("axis_inertia", "kg m2", p->Jx);
        V("axis_viscous", "N m s/rad", p->Bx); V("axis_coulomb", "N m", p->Tcx); V("imbalance", "N m", p->Timb); V("latitude", "deg", p->lat * 180 / M_PI);
    }
    V("start_motor_angle_minus_planned", "rad", p->d0); V("start_current_a", "A", p->ia0); V("start_current_b", "A", p->ib0);
    fprintf(f, "# start: motor and axis at rest, axis error 0\n");
    for (int i = 0; i < p->npiece; i++)
        fprintf(f, "# plan from t = %.15g s: motor angle %.15g rad, speed %.15g rad/s, acceleration %.15g rad/s2\n", p->piece[i].t, p->piece[i].th, p->piece[i].w, p->piece[i].a);
    V("end", "s", p->tend);
#undef V
}

static double spread(const Case *c, const Runs *u, const Column *q, int run)
{
    double worst = 0;
    int n = u->r[RUN_MAIN].nsample < u->r[run].nsample ? u->r[RUN_MAIN].nsample : u->r[run].nsample;
    for (int i = 0; i < n; i++) worst = fmax(worst, fabs(q->of(c, &u->r[RUN_MAIN], i) - q->of(c, &u->r[run], i)));
    return worst;
}

void write_samples(const char *dir, const Case *c, const Runs *u)
{
    FILE *f = open_file(dir, c, "");
    const Result *r = &u->r[RUN_MAIN];
    head(f, c, u);
    for (int j = 0; j < NCOLUMN; j++) {
        const Column *q = &column[j];
        if (!shown(c, q)) continue;
        double big = 0, tight = spread(c, u, q, RUN_TIGHT);
        for (int i = 0; i < r->nsample; i++) big = fmax(big, fabs(q->of(c, r, i)));
        fprintf(f, "# converged %s: greatest difference over the samples from 10x tighter %.1e, 10x looser %.1e", q->name, tight, spread(c, u, q, RUN_LOOSE));
        if (u->tol[RUN_BDF] > 0) fprintf(f, ", BDF at %.0e %.1e", u->tol[RUN_BDF], spread(c, u, q, RUN_BDF));
        fprintf(f, "; digits %d of the greatest\n", (int)floor(fmin(15, -log10(fmax(tight, 1e-300) / fmax(big, 1e-300)))));
    }
    fprintf(f, "time_s");
    for (int j = 0; j < NCOLUMN; j++) if (shown(c, &column[j])) fprintf(f, ",%s", column[j].name);
    fprintf(f, "\n");
    for (int i = 0; i < r->nsample; i++) {
        fprintf(f, "%.15g", r->ts[i]);
        for (int j = 0; j < NCOLUMN; j++) if (shown(c, &column[j])) fprintf(f, ",%.13g", column[j].of(c, r, i));
        fprintf(f, "\n");
    }
    fclose(f);
}

static double peak_axis(const Result *r) { return r->peak[1] / ARCSEC; }
static void scalar(FILE *f, const char *name, double main, double tight, double loose)
{
    if (isnan(main)) return;
    fprintf(f, "%s,%.13g,%.1e,%.1e\n", name, main, fabs(main - tight), fabs(main - loose));
}

void write_scalars(const char *dir, const Case *c, const Runs *u)
{
    FILE *f = open_file(dir, c, "_scalars");
    const Result *m = &u->r[RUN_MAIN], *t = &u->r[RUN_TIGHT], *l = &u->r[RUN_LOOSE];
    double Nr = c->p.Nr;
    head(f, c, u);
    fprintf(f, "quantity,value,difference_from_10x_tighter,difference_from_10x_looser\n");
#define S(name, expr) do { const Result *r; double v[3]; r = m; v[0] = (expr); r = t; v[1] = (expr); r = l; v[2] = (expr); scalar(f, name, v[0], v[1], v[2]); } while (0)
    S("peak_load_angle_electrical_rad", Nr * r->peak[0]); S("peak_load_angle_time_s", r->peak_t[0]);
    S("peak_motor_speed_rad_per_s", r->peak[2]); S("peak_motor_speed_time_s", r->peak_t[2]);
    if (c->p.n > 0) {
        S("peak_axis_error_arcsec", peak_axis(r)); S("peak_axis_error_time_s", r->peak_t[1]);
        S("final_axis_error_arcsec", c_dx(c, r, r->nsample - 1)); S("final_motor_error_rad", r->y[r->nsample - 1][D]);
        S("final_twist_arcsec", r->now[r->nsample - 1].x / ARCSEC); S("final_mesh_torque_Nm", r->now[r->nsample - 1].tm);
        if (c->p.Tcx > 0) { S("last_motor_stick_time_s", r->last_shaft_stick); S("last_axis_stick_time_s", r->last_axis_stick); }
        if (c->events) S("friction_and_contact_events", (double)r->events_total);
    }
    S("full_step_edges", (double)r->edges); S("saturation_switches", (double)r->saturations); S("time_with_a_phase_saturated_s", r->sat_time);
    S("electrical_energy_in_J", r->energy_in); S("energy_residual_J", r->energy_residual);
    S("lost_sync_time_s", r->t_lost); S("lost_sync_load_torque_Nm", r->TL_lost);
#undef S
    fclose(f);
}

void write_events(const char *dir, const Case *c, const Runs *u)
{
    FILE *f = open_file(dir, c, "_events");
    const Result *r = &u->r[RUN_MAIN], *t = &u->r[RUN_TIGHT];
    head(f, c, u);
    fprintf(f, "time_s,event,motor_speed_rad_per_s,axis_speed_rad_per_s,axis_error_arcsec,twist_arcsec,mesh_torque_Nm,time_difference_from_10x_tighter_s\n");
    for (int i = 0; i < r->nevent; i++) {
        const Event *e = &r->event[i];
        fprintf(f, "%.13g,%s,%.10g,%.10g,%.10g,%.10g,%.10g,%.1e\n", e->t, e->name, e->y[W], e->y[WX], e->y[DX] / ARCSEC, e->x / ARCSEC, e->tm,
            i < t->nevent ? fabs(e->t - t->event[i].t) : NAN);
    }
    fclose(f);
}
