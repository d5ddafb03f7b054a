#!/usr/bin/env bash
# Installs what is missing, builds everything and runs all tests.
# usage: tests/run.sh [CMAKE-ARGUMENT...]      BOLTWRIGHT_BUILD=DIR: where to build (build)
set -euo pipefail
cd "$(dirname "$0")/.."
. app/packages.sh

install "${needed_to_build[@]}" "${needed_to_test[@]}"

build=${BOLTWRIGHT_BUILD:-build}
# The window's tests need no display; texts are compared as UTF-8.
export QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8
mkdir -p "$build"
cmake -S . -B "$build" -G Ninja -DCMAKE_UNITY_BUILD=ON -DBOLTWRIGHT_TESTS=ON "$@" >"$build/configure.log" 2>&1 ||
  { cat "$build/configure.log"; exit 1; }
cmake --build "$build"
ctest --test-dir "$build" --output-on-failure --progress -j "$(nproc)"
