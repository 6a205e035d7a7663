/* Sine, cosine and exponential without a library call, for one number: the polynomials of fdlibm's kernels, as AxisSim uses them. */
#ifndef PEERS_NUMBERS_H
#define PEERS_NUMBERS_H
#include <math.h>
#include <stdint.h>
#include <string.h>

#define QUARTER_TURNS_PER_RADIAN (2.0 / M_PI)
#define ROUNDER 6755399441055744.0
#define QUARTER_TURN_HIGH 1.5707963267948966
#define QUARTER_TURN_LOW 6.123233995736766e-17

/* Without the library's care for what is not a number. */
static inline double least(double a, double b) { return a < b ? a : b; }
static inline double most(double a, double b) { return a > b ? a : b; }

static inline int64_t bits_of(double x) { int64_t b; memcpy(&b, &x, sizeof b); return b; }
static inline double of_bits(int64_t b) { double x; memcpy(&x, &b, sizeof x); return x; }

static inline void sine_cosine(double x, double *restrict sine, double *restrict cosine)
{
    double shifted = fma(x, QUARTER_TURNS_PER_RADIAN, ROUNDER), quarters = shifted - ROUNDER;
    int64_t turn = bits_of(shifted);
    double r = fma(-quarters, QUARTER_TURN_HIGH, x);
    r = fma(-quarters, QUARTER_TURN_LOW, r);
    double z = r * r, zz = z * z;
    double sl = fma(z, 8.33333333332248946124e-03, -1.66666666666666324348e-01);
    double sm = fma(z, 2.75573137070700676789e-06, -1.98412698298579493134e-04);
    double sh = fma(z, 1.58969099521155010221e-10, -2.50507602534068634195e-08);
    double cl = fma(z, -1.38888888888741095749e-03, 4.16666666666666019037e-02);
    double cm = fma(z, -2.75573143513906633035e-07, 2.48015872894767294178e-05);
    double ch = fma(z, -1.13596475577881948265e-11, 2.08757232129817482790e-09);
    double s = fma(r * z, fma(zz, fma(zz, sh, sm), sl), r);
    double c = fma(zz, fma(zz, fma(zz, ch, cm), cl), fma(z, -0.5, 1.0));
    int64_t a = bits_of(s), b = bits_of(c), swap = (a ^ b) & -(turn & 1);
    a ^= swap ^ (int64_t)((uint64_t)(turn & 2) << 62);
    b ^= swap ^ (int64_t)((uint64_t)((turn + 1) & 2) << 62);
    *sine = of_bits(a);
    *cosine = of_bits(b);
}

/* exp(-x) for x of 0 to 0.75 by its series: what a part of a step needs. Longer ones go to the library. */
static inline double decay_of(double x)
{
    if (__builtin_expect(!(x <= 0.75), 0)) return exp(-x);
    double y = -x, y2 = y * y, y4 = y2 * y2, y8 = y4 * y4;
    double a = fma(y, 1.0, 1.0), b = fma(y, 1.0 / 6, 1.0 / 2), c = fma(y, 1.0 / 120, 1.0 / 24), d = fma(y, 1.0 / 5040, 1.0 / 720);
    double e = fma(y, 1.0 / 362880, 1.0 / 40320), f = fma(y, 1.0 / 39916800, 1.0 / 3628800);
    double g = fma(y, 1.0 / 6227020800.0, 1.0 / 479001600.0), h = fma(y, 1.0 / 1307674368000.0, 1.0 / 87178291200.0);
    return fma(y8, fma(y4, fma(y2, h, g), fma(y2, f, e)), fma(y4, fma(y2, d, c), fma(y2, b, a)));
}
#endif
