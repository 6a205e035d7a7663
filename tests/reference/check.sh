#!/bin/sh
# Holds the stored numbers against a second, plain solution and against paper estimates: check.sh [CASE...].
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
flags="-std=gnu11 -O2 -Wall -Wextra -Werror"
gcc $flags -o "$work/check" "$here/check.c" "$here/cases.c" -lm
gcc $flags -o "$work/estimates" "$here/estimates.c" "$here/cases.c" "$here/hybrid.c" "$here/model.c" \
    -lsundials_cvode -lsundials_nvecserial -lsundials_sunlinsoldense -lsundials_sunmatrixdense -lsundials_sunnonlinsolfixedpoint -lm
"$work/estimates"
[ $# -gt 0 ] || set -- A B C D E F_helping F_opposing G H I
for case in "$@"; do
    "$work/check" "$here/data" "$case" 1e-6
    "$work/check" "$here/data" "$case" 2.5e-7
done
