#!/usr/bin/env bash
# Processor and wall time of each command over scenarios; of one program, or of two in turn, for before and after. See DEVELOPERS.md.
set -euo pipefail
export LC_ALL=C
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)
rounds=3 only='.'
usage() {
  cat <<TEXT
usage: benchmarks/studies.sh [--rounds N] [--only REGEX] PROGRAM [OTHER] [-- SCENARIO...]
  PROGRAM, OTHER  axissim as published; with two, they run in turn and the last column is OTHER over PROGRAM
  --rounds N      runs of each; medians are shown (3)
  --only REGEX    rows whose command and scenario match, as "^simulate"
  SCENARIO        scenario files (all in scenarios/)
TEXT
}
programs=() scenarios=()
while [ $# -gt 0 ]; do
  case "$1" in
    --rounds) [[ "${2:-}" =~ ^[1-9][0-9]?$ ]] || { echo "studies.sh: --rounds needs a whole number of 1 to 99, found \"${2:-}\"" >&2; exit 2; }; rounds=$2; shift 2 ;;
    --only) [ -n "${2:-}" ] || { echo "studies.sh: --only needs an expression" >&2; exit 2; }; only=$2; shift 2 ;;
    --help|-h) usage; exit 0 ;;
    --) shift; scenarios=("$@"); break ;;
    -*) echo "studies.sh: unknown option \"$1\"" >&2; usage >&2; exit 2 ;;
    *) programs+=("$1"); shift ;;
  esac
done
if [ ${#programs[@]} -lt 1 ] || [ ${#programs[@]} -gt 2 ]; then usage >&2; exit 2; fi
for program in "${programs[@]}"; do command -v "$program" >/dev/null || { echo "studies.sh: no program \"$program\"; publish it as DEVELOPERS.md says" >&2; exit 2; }; done
[ ${#scenarios[@]} -gt 0 ] || scenarios=("$root"/scenarios/*.toml)

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
TIMEFORMAT='%U %S %R'

# arguments NAME SCENARIO: what is typed for a row, a word a line.
arguments() {
  case "$1" in
    "simulate") printf '%s\n' simulate "$2" ;;
    "simulate, figures") printf '%s\n' simulate "$2" --out "$work/out" ;;
    "curve") printf '%s\n' curve "$2" ;;
    "curve, figures") printf '%s\n' curve "$2" --out "$work/out" ;;
    "balance") printf '%s\n' balance "$2" ;;
    "report") printf '%s\n' report "$2" --out "$work/out" --date 2026-11-28 ;;
    "map") printf '%s\n' map "$2" --x "polar.motion.ramp_time=0.3..3 s" --y "polar.motion.slew_rate=1..6 deg/s" ;;
    "envelope") printf '%s\n' envelope "$2" --axis polar --for "polar.drive.slew_current=0.7,0.9,1.1 A" ;;
    "reduction") printf '%s\n' reduction "$2" ;;
    "recommend") printf '%s\n' recommend "$2" ;;
    "compare") printf '%s\n' compare "$2" --motors "$root/catalogues/motors.csv" --ratios 144,360,720 --voltages "12,24,36 V" ;;
  esac
}

# Exit codes 0 and 3 are answers; another one is told in place of a time.
once() {
  local program=$1 words
  mapfile -t words < <(arguments "$2" "$3")
  rm -rf "$work/out"
  { time { "$program" "${words[@]}" >/dev/null 2>"$work/error" && echo 0 >"$work/code" || echo $? >"$work/code"; }; } 2>"$work/time"
  case "$(cat "$work/code")" in 0|3) awk '{ print $1 + $2, $3 }' "$work/time" ;; *) echo "failed failed" ;; esac
}
median() { sort -g | awk '{ x[NR] = $1 } END { print NR % 2 ? x[(NR + 1) / 2] : (x[NR / 2] + x[NR / 2 + 1]) / 2 }'; }
column() { awk -v c="$1" '{ print $c }' "$2" | grep -q failed && echo failed || awk -v c="$1" '{ print $c }' "$2" | median; }

if [ ${#programs[@]} = 1 ]; then
  printf '| command | scenario | processor, s | wall, s |\n|---|---|---|---|\n'
else
  printf '| command | scenario | processor before, s | after, s | ratio | wall before, s | after, s | ratio |\n|---|---|---|---|---|---|---|---|\n'
fi
ratio() { awk -v a="$1" -v b="$2" 'BEGIN { if (a ~ /failed/ || b ~ /failed/ || a == 0) print "-"; else printf "%.2f", b / a }'; }
for name in "simulate" "simulate, figures" "curve" "curve, figures" balance report map envelope reduction recommend compare; do
  for scenario in "${scenarios[@]}"; do
    label=$(basename "$scenario" .toml)
    grep -Eq -- "$only" <<<"$name $label" || continue
    rm -f "$work"/times.*
    for ((i = 0; i < rounds; i++)); do
      for p in "${!programs[@]}"; do once "${programs[$p]}" "$name" "$scenario" >>"$work/times.$p"; done
    done
    a=$(column 1 "$work/times.0") b=$(column 2 "$work/times.0")
    if [ ${#programs[@]} = 1 ]; then
      printf '| %s | %s | %s | %s |\n' "$name" "$label" "$a" "$b"
    else
      c=$(column 1 "$work/times.1") d=$(column 2 "$work/times.1")
      printf '| %s | %s | %s | %s | %s | %s | %s | %s |\n' "$name" "$label" "$a" "$c" "$(ratio "$a" "$c")" "$b" "$d" "$(ratio "$b" "$d")"
    fi
  done
done
