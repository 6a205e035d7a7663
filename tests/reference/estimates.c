/* Paper estimates beside the stored results: estimates. Each is a law simpler than the simulation, with its own source. */
#include "cases.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

static Result r;
static Case named(const char *name)
{
    for (int i = 0; i < case_count(); i++) { Case c = case_get(i); if (!strcmp(c.name, name)) return c; }
    return case_get(0);
}

/* A, but let go 0.002 rad electrical from rest: f = sqrt((Nr T_hold - 4 Nr Td) / J) / 2 pi, amplitude falling as exp(-Bm t / 2 J). */
static void rotor_frequency(void)
{
    Case c = named("A");
    c.p.d0 = 2e-5; c.p.ia0 = -c.p.I;
    c.nsample = 60;
    double k = c.p.Nr * (c.p.Thold - 4 * c.p.Td), decay = c.p.Bm / (2 * c.p.J), w = sqrt(k / c.p.J - decay * decay), worst = 0;
    for (int i = 0; i < c.nsample; i++) c.ts[i] = 0.0006 * (i + 1);
    hybrid_run(&c.p, 1e-11, 0, c.nsample, c.ts, 0, &r);
    for (int i = 0; i < r.nsample; i++) {
        double t = r.ts[i], e = c.p.d0 * exp(-decay * t) * (cos(w * t) + decay / w * sin(w * t));
        worst = fmax(worst, fabs(r.y[i][D] - e));
    }
    printf("A: small oscillation %.3f Hz, decay %.3f 1/s: solution differs by %.1e of the amplitude over 13 periods (linear law, so about the angle squared)\n",
        w / 2 / M_PI, decay, worst / c.p.d0);
}

/* H: mean torque with the rotor turned at constant speed, scanned over the load angle; its greatest is the quasi-static pull-out.
   Also the closed form for square-wave voltage, and the current limit 4 I / pi: the machine must stay below both. */
static void pull_out(void)
{
    const Par p = named("H").p;
    static const double sa[4] = { 1, -1, -1, 1 }, sb[4] = { 1, 1, -1, -1 };
    double Km = par_Km(&p), w = 60, best = 0, at = 0;
    for (double lag = 0.2; lag < 3.1; lag += 0.01) {
        double i[2] = { p.I, p.I }, sum = 0;
        int periods = 40, n = 1500;
        double h = M_PI_2 / (p.Nr * w) / n;
        for (int q = 0; q < 4 * periods; q++)
            for (int s = 0; s < n; s++) {
                double k[4][2], mean = 0;
                for (int stage = 0; stage < 4; stage++) {
                    double at_t = (q * n + s + (stage == 0 ? 0 : stage == 3 ? 1 : 0.5)) * h, e = p.Nr * w * at_t - lag, v, em[2] = { -Km * w * sin(e), Km * w * cos(e) }, x;
                    for (int ph = 0; ph < 2; ph++) {
                        x = i[ph] + (stage == 0 ? 0 : (stage == 3 ? h : h / 2) * k[stage - 1][ph]);
                        v = p.R * x + em[ph] + p.L / p.tau * (p.F * p.I * (ph ? sb : sa)[q & 3] - x);
                        v = fmax(-p.Vs, fmin(p.Vs, v));
                        k[stage][ph] = (v - p.R * x - em[ph]) / p.L;
                        if (stage == 0) mean += x * em[ph] / w;
                    }
                }
                for (int ph = 0; ph < 2; ph++) i[ph] += h / 6 * (k[0][ph] + 2 * k[1][ph] + 2 * k[2][ph] + k[3][ph]);
                if (q >= 4 * (periods - 1)) sum += mean;
            }
        double torque = sum / (4 * n) - p.Bm * w;
        if (torque > best) { best = torque; at = lag; }
    }
    double V = 4 * p.Vs / M_PI, X = p.Nr * w * p.L, Z2 = p.R * p.R + X * X;
    printf("H: quasi-static pull-out %.5f N m at a load angle of %.2f rad; bounds: voltage %.4f, current %.4f N m\n", best, at,
        Km * V / sqrt(Z2) - Km * Km * w * p.R / Z2 - p.Bm * w, Km * 4 * p.I / M_PI - p.Bm * w);
    printf("   the ramp goes on while the rotor falls back, so the stored torque at an angle of pi is a little above\n");
}

/* C: voltage that the commanded sine would need at the final speed. */
static void saturation(void)
{
    const Par p = named("C").p;
    double w = p.piece[p.npiece - 1].w;
    printf("C: inductive voltage Nr w L I = %.1f V and back-EMF Km w = %.1f V against a supply of %.0f V: saturates\n", p.Nr * w * p.L * p.I, par_Km(&p) * w, p.Vs);
}

/* E: at rest the twist is half the backlash plus tm / k, the error is e(p) - twist + d / n, and friction holds tm + gravity. */
static void rest(void)
{
    Case c = named("E");
    hybrid_run(&c.p, 1e-10, 0, c.nsample, c.ts, 0, &r);
    const Par *p = &c.p;
    const double *y = r.y[r.nsample - 1], as = 648000 / M_PI;
    double tm = r.now[r.nsample - 1].tm, th = r.now[r.nsample - 1].th / p->n, twist = (tm > 0 ? 1 : -1) * p->b / 2 + tm / p->k;
    double error = p->Aper * sin(p->Nper * th) - twist + y[D] / p->n, g = p->Timb * cos(p->lat) * sin(y[DX] + r.now[r.nsample - 1].thc / p->n);
    printf("E: rest error by statics %.6f, solution %.6f arcsec; held torque %.4f within %.1f N m\n", error * as, y[DX] * as, tm + g, p->Tcx);
}

/* D: axis on its mesh spring, motor held: f = sqrt(k / Jx) / 2 pi. */
static void axis_frequency(void)
{
    const Par p = named("D").p;
    double km = p.Nr * (p.Irated > 0 ? p.Thold / M_SQRT2 : 0) + 4 * p.Nr * p.Td, kr = p.n * p.n * km, k = p.k * kr / (p.k + kr);
    printf("D: axis on mesh and motor springs in series: %.3f Hz (motor spring %.0f N m/rad at the axis); rotor alone %.1f Hz\n",
        sqrt(k / p.Jx) / 2 / M_PI, kr, sqrt(km / p.J) / 2 / M_PI);
}

int main(void)
{
    rotor_frequency();
    pull_out();
    saturation();
    axis_frequency();
    rest();
    return 0;
}
