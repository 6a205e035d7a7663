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
/* a held to the size of b, and the one of greater size. */
INLINE vd within(vd a, vd b) { return _mm512_range_pd(a, b, 2); }
INLINE vd larger(vd a, vd b) { return _mm512_range_pd(a, b, 3); }
INLINE vd pick(mask m, vd yes, vd no) { return _mm512_mask_blend_pd(m, no, yes); }
INLINE mask differs(vd a, vd b) { return _mm512_cmp_pd_mask(a, b, _CMP_NEQ_UQ); }
INLINE mask above(vd a, vd b) { return _mm512_cmp_pd_mask(a, b, _CMP_GT_OQ); }
/* Where two numbers have not the same sign (a zero has one, too). */
INLINE mask opposed(vd a, vd b) { return _mm512_movepi64_mask(_mm512_xor_si512((__m512i)a, (__m512i)b)); }
INLINE int any_opposed(vd a, vd b, vd c, vd d) { return _mm512_movepi64_mask(_mm512_or_si512(_mm512_xor_si512((__m512i)a, (__m512i)b), _mm512_xor_si512((__m512i)c, (__m512i)d))); }
INLINE mask either(mask a, mask b) { return (mask)(a | b); }
INLINE mask both(mask a, mask b) { return (mask)(a & b); }
INLINE int any(mask a) { return a != 0; }
INLINE void turned(vd s, vd c, vd shifted, vd *sine, vd *cosine)
{
    __m512i turn = (__m512i)shifted, top = _mm512_set1_epi64(INT64_MIN);
    mask odd = _mm512_test_epi64_mask(turn, _mm512_set1_epi64(1));
    vd a = pick(odd, c, s), b = pick(odd, s, c);
    /* Bit 1 of the turn is the sign of the sine; of the cosine it is bit 1 against bit 0. */
    __m512i sign = _mm512_slli_epi64(turn, 62), other = _mm512_xor_si512(sign, _mm512_add_epi64(sign, sign));
    *sine = (vd)_mm512_ternarylogic_epi64((__m512i)a, sign, top, 0x78);
    *cosine = (vd)_mm512_ternarylogic_epi64((__m512i)b, other, top, 0x78);
}
#else
typedef double vd __attribute__((vector_size(8 * WIDTH)));
typedef int64_t mask __attribute__((vector_size(8 * WIDTH)));
INLINE vd all(double x) { return (vd){ 0 } + x; }
INLINE vd mad(vd a, vd b, vd c) { return a * b + c; }
INLINE vd nmad(vd a, vd b, vd c) { return c - a * b; }
INLINE vd msub(vd a, vd b, vd c) { return a * b - c; }
INLINE mask top_bit(void) { return (mask){ 0 } + INT64_MIN; }
INLINE vd size_of(vd a) { return (vd)((mask)a & ~top_bit()); }
INLINE vd with_sign(vd a, vd s) { return (vd)(((mask)a & ~top_bit()) | ((mask)s & top_bit())); }
INLINE vd pick(mask m, vd yes, vd no) { return (vd)(((mask)yes & m) | ((mask)no & ~m)); }
INLINE mask differs(vd a, vd b) { return a != b; }
INLINE mask above(vd a, vd b) { return a > b; }
INLINE mask opposed(vd a, vd b) { return ((mask)a ^ (mask)b) < 0; }
INLINE int any(mask a);
INLINE int any_opposed(vd a, vd b, vd c, vd d) { return any((((mask)a ^ (mask)b) | ((mask)c ^ (mask)d)) < 0); }
INLINE mask either(mask a, mask b) { return a | b; }
INLINE mask both(mask a, mask b) { return a & b; }
INLINE vd within(vd a, vd b) { vd x = size_of(a), y = size_of(b); return with_sign(pick(x < y, x, y), a); }
INLINE vd larger(vd a, vd b) { return pick(size_of(a) < size_of(b), b, a); }
INLINE int any(mask a)
{
    int64_t r = 0;
    for (int i = 0; i < WIDTH; i++) r |= a[i];
    return r != 0;
}
INLINE void turned(vd s, vd c, vd shifted, vd *sine, vd *cosine)
{
    mask turn = (mask)shifted, odd = -(turn & 1);
    *sine = (vd)((mask)pick(odd, c, s) ^ ((turn << 62) & top_bit()));
    *cosine = (vd)((mask)pick(odd, s, c) ^ (((turn + 1) << 62) & top_bit()));
}
#endif

INLINE void sine_cosine_v(vd x, vd *restrict sine, vd *restrict cosine)
{
    vd shifted = mad(x, all(QUARTER_TURNS_PER_RADIAN), all(ROUNDER)), quarters = shifted - all(ROUNDER);
    vd r = nmad(quarters, all(QUARTER_TURN_LOW), nmad(quarters, all(QUARTER_TURN_HIGH), x)), z = r * r, zz = z * z;
    vd sl = mad(z, all(8.33333333332248946124e-03), all(-1.66666666666666324348e-01));
    vd sm = mad(z, all(2.75573137070700676789e-06), all(-1.98412698298579493134e-04));
    vd sh = mad(z, all(1.58969099521155010221e-10), all(-2.50507602534068634195e-08));
    vd cl = mad(z, all(-1.38888888888741095749e-03), all(4.16666666666666019037e-02));
    vd cm = mad(z, all(-2.75573143513906633035e-07), all(2.48015872894767294178e-05));
    vd ch = mad(z, all(-1.13596475577881948265e-11), all(2.08757232129817482790e-09));
    vd s = mad(r * z, mad(zz, mad(zz, sh, sm), sl), r);
    vd c = mad(zz, mad(zz, mad(zz, ch, cm), cl), nmad(z, all(0.5), all(1.0)));
    turned(s, c, shifted, sine, cosine);
}
#endif
