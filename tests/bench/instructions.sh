#!/usr/bin/env bash
# Instructions of the search's inner loops, by callgrind: a fixed number of steps on one thread, so that a count can be
# compared with an earlier one on any machine of the same kind, however busy it is.
#
#   instructions.sh BUILD [STEPS] [HOW_MANY]     BUILD: where rectangle_bench and polygon_bench have been built
#
# Prints the functions of the planner that take most instructions themselves, with what they are called on.
set -euo pipefail
build=${1:?the build folder}
steps=${2:-20000}
most=${3:-8}
shared=${BOLTWRIGHT_SHARED:-$(cd "$(dirname "$0")/../../../shared" && pwd)}
export BOLTWRIGHT_SHARED=$shared
counts=$(mktemp)
trap 'rm -f "$counts"' EXIT

count() {
    local what=$1
    shift
    valgrind --quiet --tool=callgrind --callgrind-out-file="$counts" "$@" >/dev/null
    echo "== $what"
    callgrind_annotate --threshold=100 "$counts" | sed -n 's/PROGRAM TOTALS/in all/p; /boltwright/p' | awk -v most="$most" 'NR <= most + 1' |
        sed -E 's/ \[[^]]*\]$//; s/[^ ]*\?\?\?://; s/boltwright::(planner::)?//g; s/\(anonymous namespace\):://g' | cut -c1-150
}

count "orders, plain cloth, C4P1" "$build/tests/bench/rectangle_bench" C --only C4P1 --steps "$steps" --threads 1
count "part layouts, half-drop, 24 panels" "$build/tests/bench/rectangle_bench" drop --sizes 24 --seeds 1 --shrink 2 --steps "$steps" --threads 1
count "slanted pieces, fu" "$build/tests/bench/polygon_bench" --steps "$steps" --threads 1 "$shared/bench/poly/fu.json"
