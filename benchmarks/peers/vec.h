/* A vector of doubles, one lane each: WIDTH 8 is AVX-512, any other (4, 2) gcc's own vectors. */
#ifndef PEERS_VEC_H
#define PEERS_VEC_H
#include "numbers.h"

#ifndef WIDTH
#ifdef __AVX512DQ__
#define WIDTH 8
#elif defined __AVX2__
#define WIDTH 4
#else
#define WIDTH 2
#endif
#endif
#define INLINE static inline __attribute__((always_inline))

#if WIDTH == 8
#include <immintrin.h>
typedef __m512d vd;
typedef __mmask8 mask;
INLINE vd all(double x) { return _mm512_set1_pd(x); }
INLINE vd mad(vd a, vd b, vd c) { return _mm512_fmadd_pd(a, b, c); }      /* a b + c */
INLINE vd nmad(vd a, vd b, vd c) { return _mm512_fnmadd_pd(a, b, c); }    /* c - a b */
INLINE vd msub(vd a, vd b, vd c) { return _mm512_fmsub_pd(a, b, c); }     /* a b - c */
INLINE vd size_of(vd a) { return _mm512_abs_pd(a); }
INLINE vd with_sign(vd a, vd s) { return (vd)_mm512_ternarylogic_epi64((__m512i)a, (__m512i)s, _mm512_set1_epi64(INT64_MIN), 0xD8); }
/* a held to the size of b. */
INLINE vd within(vd a, vd b) { return _mm512_range_pd(a, b, 2); }
INLINE vd pick(mask m, vd yes, vd no) { return _mm512_mask_blend_pd(m, no, yes); }
INLINE mask differs(vd a, vd b) { return _mm512_cmp_pd_mask(a, b, _CMP_NEQ_UQ); }
INLINE mask above(vd a, vd b) { return _mm512_cmp_pd_mask(a, b, _CMP_GT_OQ); }
/* Where two numbers have not the same sign (a zero has one, too). */
INLINE mask opposed(vd a, vd b) { return _mm512_movepi64_mask(_mm512_xor_si512((__m512i)a, (__m512i)b)); }
/* Whether anywhere a and b, or c and d, have not the same sign, or e is below zero. */
INLINE int unusual(vd a, vd b, vd c, vd d, vd e)
{
    __m512i first = _mm512_xor_si512((__m512i)a, (__m512i)b), second = _mm512_xor_si512((__m512i)c, (__m512i)d);
    return _mm512_movepi64_mask(_mm512_ternarylogic_epi64(first, second, (__m512i)e, 0xFE));
}
INLINE mask either(mask a, mask b) { return (mask)(a | b); }
INLINE mask both(mask a, mask b) { return (mask)(a & b); }
INLINE int any(mask a) { return a != 0; }
INLINE vd eighth_of(const double *table, vd shifted) { return _mm512_permutexvar_pd((__m512i)shifted, _mm512_load_pd(table)); }
#else
typedef double vd __attribute__((vector_size(8 * WIDTH)));
typedef int64_t mask __attribute__((vector_size(8 * WIDTH)));
INLINE vd all(double x) { return (vd){ 0 } + x; }
#if WIDTH == 4 && defined __FMA__
#include <immintrin.h>
INLINE vd mad(vd a, vd b, vd c) { return _mm256_fmadd_pd(a, b, c); }
INLINE vd nmad(vd a, vd b, vd c) { return _mm256_fnmadd_pd(a, b, c); }
INLINE vd msub(vd a, vd b, vd c) { return _mm256_fmsub_pd(a, b, c); }
#elif WIDTH == 2 && defined __FMA__
#include <immintrin.h>
INLINE vd mad(vd a, vd b, vd c) { return _mm_fmadd_pd(a, b, c); }
INLINE vd nmad(vd a, vd b, vd c) { return _mm_fnmadd_pd(a, b, c); }
INLINE vd msub(vd a, vd b, vd c) { return _mm_fmsub_pd(a, b, c); }
#else
INLINE vd mad(vd a, vd b, vd c) { return a * b + c; }
INLINE vd nmad(vd a, vd b, vd c) { return c - a * b; }
INLINE vd msub(vd a, vd b, vd c) { return a * b - c; }
#endif
INLINE mask top_bit(void) { return (mask){ 0 } + INT64_MIN; }
INLINE vd size_of(vd a) { return (vd)((mask)a & ~top_bit()); }
INLINE vd with_sign(vd a, vd s) { return (vd)(((mask)a & ~top_bit()) | ((mask)s & top_bit())); }
INLINE vd pick(mask m, vd yes, vd no) { return (vd)(((mask)yes & m) | ((mask)no & ~m)); }
INLINE mask differs(vd a, vd b) { return a != b; }
INLINE mask above(vd a, vd b) { return a > b; }
INLINE mask opposed(vd a, vd b) { return ((mask)a ^ (mask)b) < 0; }
INLINE int any(mask a);
INLINE int unusual(vd a, vd b, vd c, vd d, vd e) { return any((((mask)a ^ (mask)b) | ((mask)c ^ (mask)d) | (mask)e) < 0); }
INLINE mask either(mask a, mask b) { return a | b; }
INLINE mask both(mask a, mask b) { return a & b; }
INLINE vd within(vd a, vd b) { vd x = size_of(a), y = size_of(b); return with_sign(pick(x < y, x, y), a); }
INLINE int any(mask a)
{
    int64_t r = 0;
    for (int i = 0; i < WIDTH; i++) r |= a[i];
    return r != 0;
}
INLINE vd eighth_of(const double *table, vd shifted)
{
    vd r;
    for (int i = 0; i < WIDTH; i++) r[i] = table[((mask)shifted)[i] & 7];
    return r;
}
#endif

/* Sine and cosine at whole eighths of a turn, and the minimax polynomials within a sixteenth to either side (relative error below 3e-17). */
#define HALF_ROOT 0.70710678118654752440
static const double eighth_sine[8] __attribute__((aligned(64))) = { 0, HALF_ROOT, 1, HALF_ROOT, 0, -HALF_ROOT, -1, -HALF_ROOT };
static const double eighth_cosine[8] __attribute__((aligned(64))) = { 1, HALF_ROOT, 0, -HALF_ROOT, -1, -HALF_ROOT, 0, HALF_ROOT };
#define EIGHTHS_PER_RADIAN 1.2732395447351628
#define EIGHTH_HIGH 0.78539816339744828
#define EIGHTH_LOW 3.061616997868383e-17
#define S1 -1.66666666666666380e-01
#define S2 8.33333333330324270e-03
#define S3 -1.98412697457616181e-04
#define S4 2.75571929497238201e-06
#define S5 -2.49779165369686755e-08
#define C1 -4.99999999999996447e-01
#define C2 4.16666666662756091e-02
#define C3 -1.38888887647674146e-03
#define C4 2.48014231915810369e-05
#define C5 -2.74608904716222410e-07

INLINE void sine_cosine_v(vd x, vd *restrict sine, vd *restrict cosine)
{
    vd shifted = mad(x, all(EIGHTHS_PER_RADIAN), all(ROUNDER)), eighths = shifted - all(ROUNDER);
    vd r = nmad(eighths, all(EIGHTH_LOW), nmad(eighths, all(EIGHTH_HIGH), x)), z = r * r, zz = z * z;
    vd s = mad(zz, mad(zz, all(S5), mad(z, all(S4), all(S3))), mad(z, all(S2), all(S1)));
    vd c = z * mad(zz, mad(zz, all(C5), mad(z, all(C4), all(C3))), mad(z, all(C2), all(C1)));
    s = mad(r * z, s, r);
    vd a = eighth_of(eighth_sine, shifted), b = eighth_of(eighth_cosine, shifted);
    *sine = mad(a, c, mad(b, s, a));
    *cosine = mad(b, c, nmad(a, s, b));
}
#endif
