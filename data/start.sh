#!/bin/sh
# start.sh [ARGUMENT...]: build Leafwend and run it from the source tree. With a display it opens
# the window, on a copy of the demo season unless a season is named. Without one it writes the demo
# season's curves, pictures and a wall card into out/; arguments, if there are any, go to leafwend-cli instead.
# SPDX-License-Identifier: GPL-3.0-or-later
set -eu
came_from=$PWD
cd "$(dirname "$0")/.."
top=$PWD
demo=$top/data/ondry-ridge-2026.leafwend

sh data/packages.sh build
[ -f build/build.ninja ] || meson setup build
ninja -C build

export LEAFWEND_DATA="$top/data" LEAFWEND_DOCS="$top/build/docs" LEAFWEND_LOCALE="$top/build/po"
export GSETTINGS_SCHEMA_DIR="$top/build/data"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  cd "$came_from"
  exec "$top/build/src/bench/leafwend" "$@"
fi

if [ $# -gt 0 ]; then
  cd "$came_from"
  exec "$top/build/src/cli/leafwend-cli" "$@"
fi

mkdir -p out
build/src/cli/leafwend-cli run "$demo" -o out/curves.csv
build/src/cli/leafwend-cli picture "$demo" -o out/
build/src/cli/leafwend-cli card "$demo" --batch 12 --sheet -o out/card-12.pdf
echo "No display: wrote the demo season's curves to out/curves.csv, a picture of each batch to out/, and the wall card" \
  "of batch 12 to out/card-12.pdf."
