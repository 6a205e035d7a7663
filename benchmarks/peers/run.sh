#!/usr/bin/env bash
# AxisSim beside its peers: builds all of them, runs them in turn, and prints a table of ratios. See README.md.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
export LC_ALL=C

rounds=5 lanes=96 map=1 fine=0
usage() {
  cat <<TEXT
usage: ./run.sh [--rounds N] [--lanes N] [--skip-map] [--fine-map]
  --rounds N   rounds of every program in turn; medians are shown (5)
  --lanes N    lanes of the batch (96)
  --skip-map   leave the map of 100 x 100 moves out
  --fine-map   also run AxisSim's map at 10 us and count the cells that differ (slow)
TEXT
}
whole() { [[ "${1:-}" =~ ^[1-9][0-9]{0,3}$ ]] || { echo "run.sh: $2 needs a whole number of 1 to 9999, found \"${1:-}\"" >&2; exit 2; }; }
while [ $# -gt 0 ]; do
  case "$1" in
    --rounds) whole "${2:-}" --rounds; rounds=$2; shift 2 ;;
    --lanes) whole "${2:-}" --lanes; lanes=$2; shift 2 ;;
    --skip-map) map=0; shift ;;
    --fine-map) fine=1; shift ;;
    --help|-h) usage; exit 0 ;;
    *) echo "run.sh: unknown option \"$1\"" >&2; usage >&2; exit 2 ;;
  esac
done
[ "$map" = 1 ] || [ "$fine" = 0 ] || { echo "run.sh: --fine-map needs the map; leave --skip-map out" >&2; exit 2; }

missing=0
need() { # need WHAT HOW-TO-GET-IT TEST...
  local what=$1 how=$2
  shift 2
  "$@" >/dev/null 2>&1 || { echo "run.sh: $what is missing; $how" >&2; missing=1; }
}
has_cvode() { echo '#include <cvode/cvode.h>' | gcc -E - ; }
need gcc "apt-get install gcc libc6-dev" command -v gcc
need make "apt-get install make" command -v make
need taskset "apt-get install util-linux" command -v taskset
need "the SUNDIALS solver" "apt-get install libsundials-dev" has_cvode
need "the .NET 10 SDK" "see https://dotnet.microsoft.com/download" command -v dotnet
[ "$missing" = 0 ] || exit 2

build=build
data=../../tests/reference/data
echo "building ..." >&2
make -s BUILD="$build" all
dotnet publish ../AxisSim.Benchmarks -c Release -o "$build/axissim" -v quiet -nologo >"$build/publish.log" 2>&1 || { cat "$build/publish.log" >&2; exit 1; }

cores=$(nproc)
pin="taskset -c $((cores - 1))"
ours() { dotnet "$build/axissim/AxisSim.Benchmarks.dll" peers "$@"; }
field() { sed -n "s/.*\"$1\":\"\{0,1\}\([^,\"}]*\).*/\1/p"; }
results="$build/results.txt"
: >"$results"
# keep NAME: stores the figure of each line of JSON under NAME, or NAME followed by what the line is about.
keep() { local line; while read -r line; do echo "$1 $(field value <<<"$line") $line" >>"$results"; done; }
median() { awk -v n="$1" '$1 == n { print $2 }' "$results" | sort -g | awk '{ x[NR] = $1 } END { if (NR == 0) exit 1; print NR % 2 ? x[(NR + 1) / 2] : (x[NR / 2] + x[NR / 2 + 1]) / 2 }'; }

# The loosest tolerance at which the solver is at least as near to the stored tight solution as the step of 50 us, in axis, rest and motor angle.
echo "matching the solver's accuracy ..." >&2
step_error=$("$build/scalar_fine" errors helping "$data/F_helping.csv")
"$build/cvode" table helping "$data/F_helping.csv" >"$build/ladder.txt"
matched() {
  local line ok best=""
  while read -r line; do
    [ "$(field what <<<"$line")" = "cvode $1" ] || continue
    ok=1
    for e in axis_arcsec end_arcsec motor_rad; do
      awk -v a="$(field $e <<<"$line")" -v b="$(field $e <<<"$step_error")" 'BEGIN { exit !(a <= b) }' || ok=0
    done
    if [ "$ok" = 1 ] && { [ -z "$best" ] || awk -v a="$(field tolerance <<<"$line")" -v b="$(field tolerance <<<"$best")" 'BEGIN { exit !(a > b) }'; }; then best=$line; fi
  done <"$build/ladder.txt"
  [ -n "$best" ] || { echo "run.sh: no tolerance of cvode $1 reaches the accuracy of the step" >&2; exit 1; }
  echo "$best"
}
adams_error=$(matched adams)
bdf_error=$(matched bdf)
adams=$(field tolerance <<<"$adams_error")
bdf=$(field tolerance <<<"$bdf_error")

for ((round = 1; round <= rounds; round++)); do
  echo "round $round of $rounds ..." >&2
  for turn in 1 2 3; do
    $pin "$build/scalar" | while read -r line; do keep "c-$(field what <<<"$line" | tr ' ' '-')" <<<"$line"; done
    $pin "$build/rearranged" | while read -r line; do keep "rearranged-$(field what <<<"$line" | tr ' ' '-')" <<<"$line"; done
    [ "$turn" = 2 ] && { $pin dotnet "$build/axissim/AxisSim.Benchmarks.dll" peers scalar | while read -r line; do keep "ours-$(field what <<<"$line" | tr ' ' '-')" <<<"$line"; done; }
    $pin "$build/team" $(((lanes + 7) / 8)) | keep c-lanes
  done
  $pin dotnet "$build/axissim/AxisSim.Benchmarks.dll" peers lanes "$lanes" | keep ours-lanes
  $pin "$build/cvode" adams helping "$adams" | keep adams
  $pin "$build/cvode" bdf helping "$bdf" | keep bdf
  if [ "$map" = 1 ]; then
    $pin "$build/map" 1 | keep c-map-1
    $pin dotnet "$build/axissim/AxisSim.Benchmarks.dll" peers map 1 | keep ours-map-1
    "$build/map" 2 50 "$build/grid-c.txt" | keep c-map-2
    ours map 2 50 "$build/grid.txt" | keep ours-map-2
  fi
done
if [ "$fine" = 1 ]; then
  echo "the map at 10 us ..." >&2
  ours map "$cores" 10 "$build/grid-fine.txt" >"$build/fine.txt"
fi

table="$build/table.csv"
echo "what,ours,peer,ratio,goal,met" >"$table"
# row WHAT OURS PEER RATIO GOAL: GOAL like "<= 1.05" or "-" is asked of the ratio, or of ours where there is no ratio.
row() {
  local met="-" value=$4
  [ "$value" != "-" ] || value=${2%% *}
  [ "$5" = "-" ] || met=$(awk -v x="${value%% *}" -v g="$5" 'BEGIN { split(g, p, " "); ok = p[1] == "<=" ? (x + 0 <= p[2] + 0) : (x + 0 >= p[2] + 0); print(ok ? "yes" : "no") }')
  echo "$1,$2,$3,$4,$5,$met" >>"$table"
}
calc() { awk "BEGIN { printf \"$1\", $2 }"; }
ratio_row() { row "$1" "$(calc "%.4g" "$2") $4" "$(calc "%.4g" "$3") $4" "$(calc "%.3g" "$2 / $3")" "$5"; }
per_second=20000                          # steps in a simulated second
ours_scalar=$(median ours-scalar-helping)
ours_lanes=$(median ours-lanes)
ratio_row "one axis (imbalance helping) against C" "$ours_scalar" "$(median c-scalar-helping)" "ns/step" "<= 1.05"
ratio_row "one axis (imbalance opposing) against C" "$(median ours-scalar-opposing)" "$(median c-scalar-opposing)" "ns/step" "<= 1.05"
ratio_row "one axis (imbalance helping) against C rearranged" "$ours_scalar" "$(median rearranged-scalar-helping)" "ns/step" "-"
ratio_row "$lanes axes at once against vector C" "$ours_lanes" "$(median c-lanes)" "ns/step/lane" "<= 1.2"
row "$lanes axes at once" "$(calc "%.4g" "$ours_lanes") ns/step/lane" "-" "-" "<= 3.3"
for method in adams bdf; do
  solver=$(median $method)
  goal_one="-" goal_lane="-"
  [ $method = bdf ] || { goal_one=">= 40" goal_lane=">= 400"; }
  name="CVODE $([ $method = bdf ] && echo BDF || echo Adams)"
  row "$name over one axis" "$(calc "%.4g" "1e3 * 1e-9 * $per_second * $ours_scalar") ms/s" "$(calc "%.4g" "1e3 * $solver") ms/s" "$(calc "%.3g" "$solver / (1e-9 * $per_second * $ours_scalar)")" "$goal_one"
  row "$name over an axis among $lanes" "$(calc "%.4g" "1e3 * 1e-9 * $per_second * $ours_lanes") ms/s" "$(calc "%.4g" "1e3 * $solver") ms/s" "$(calc "%.3g" "$solver / (1e-9 * $per_second * $ours_lanes)")" "$goal_lane"
done
differing() { awk 'NR == FNR { a[FNR] = $0; next } { for (i = 1; i <= length($0); i++) { n++; d += substr($0, i, 1) != substr(a[FNR], i, 1) } } END { printf "%.2f", 100 * d / n }' "$1" "$2"; }
if [ "$map" = 1 ]; then
  one=$(median ours-map-1) two=$(median ours-map-2) c_one=$(median c-map-1) c_two=$(median c-map-2)
  ratio_row "map of 100 x 100 moves - one thread" "$one" "$c_one" "s" "-"
  ratio_row "map of 100 x 100 moves - two threads" "$two" "$c_two" "s" "-"
  row "map of 100 x 100 moves - two threads" "$(calc "%.4g" "$two") s" "-" "-" "<= 7"
  row "gain of two threads on the map" "$(calc "%.3g" "$one / $two")" "$(calc "%.3g" "$c_one / $c_two")" "-" ">= 1.85"
  row "cells of the map other than in C" "$(differing "$build/grid.txt" "$build/grid-c.txt") %" "-" "-" "-"
  [ "$fine" = 0 ] || row "cells of the map other at 10 us" "$(differing "$build/grid.txt" "$build/grid-fine.txt") %" "-" "-" "<= 0.2"
fi

error_of() { echo "axis $(field axis_arcsec <<<"$1") arcsec along the way and $(field end_arcsec <<<"$1") at rest, motor $(field motor_rad <<<"$1") rad, current $(field current_A <<<"$1") A"; }
notes="$build/notes.txt"
{
  echo "Medians of $rounds rounds in turn on $(awk -F': ' '/model name/ { print $2; exit }' /proc/cpuinfo), $cores cores; $(gcc --version | head -n 1); .NET $(dotnet --version)."
  echo "Worst error against the stored tight solution: step of 50 us: $(error_of "$step_error")."
  echo "CVODE Adams at relative tolerance $adams: $(error_of "$adams_error")."
  echo "CVODE BDF at relative tolerance $bdf: $(error_of "$bdf_error")."
} >"$notes"
awk -F, '{ for (i = 1; i <= NF; i++) { c[NR, i] = $i; if (length($i) > w[i]) w[i] = length($i) } n = NF }
  END { for (r = 1; r <= NR; r++) { for (i = 1; i <= n; i++) printf("%s%-" w[i] "s", (i > 1 ? " | " : ""), c[r, i]); print "" } }' "$table"
cat "$notes"
{
  awk -F, 'NR == 1 { gsub(/,/, " | "); print "| " $0 " |"; print "|---|---|---|---|---|---|"; next } { gsub(/,/, " | "); print "| " $0 " |" }' "$table"
  echo
  sed 's/^/- /' "$notes"
} >"$build/table.md"
echo "written: benchmarks/peers/$table, benchmarks/peers/$build/table.md" >&2
