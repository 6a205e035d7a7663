#!/bin/sh
# Rebuilds the stored reference numbers: make.sh [CASE...]. Needs gcc and libsundials-dev. See README.md.
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
gcc -std=gnu11 -O2 -Wall -Wextra -Werror -o "$work/reference" "$here"/main.c "$here"/write.c "$here"/cases.c "$here"/hybrid.c "$here"/model.c \
    -lsundials_cvode -lsundials_nvecserial -lsundials_sunlinsoldense -lsundials_sunmatrixdense -lsundials_sunnonlinsolfixedpoint -lm
mkdir -p "$here/data"
[ $# -gt 0 ] || set -- A B C D E F_helping F_opposing G H I
for case in "$@"; do
    "$work/reference" "$case" "$here/data"
done
