#!/usr/bin/env bash
# Installs what is missing, builds Boltwright, plans a first job and opens it. Call it again at any time.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/packages.sh

install "${needed_to_build[@]}"

echo "Building into build/"
mkdir -p build
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON \
  -DBOLTWRIGHT_TESTS=OFF >build/configure.log 2>&1 ||
  { cat build/configure.log; exit 1; }
cmake --build build --target boltwright

job=build/first-run/hall-bench.boltwright
mkdir -p build/first-run
cp samples/hall-bench.boltwright "$job"
echo "Planning $job"
build/boltwright plan "$job"
build/boltwright draw "$job" --out build/first-run/hall-bench.svg
build/boltwright draw "$job" --out build/first-run/hall-bench.png
build/boltwright sheet "$job" --out build/first-run/hall-bench.pdf
echo "The layout's picture is build/first-run/hall-bench.png (and .svg), its cutting sheet build/first-run/hall-bench.pdf"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  echo "Opening the window; next time: build/boltwright $job"
  exec build/boltwright "$job"
fi
echo "There is no display here. Where there is one: build/boltwright $job"
