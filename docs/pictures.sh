#!/bin/sh
# pictures.sh [BUILD [NAME...]]: makes the pictures of the documentation anew, from the built program in
# a real window on an unseen screen: all, or those that functions of pictures.py are named for. Needs
# what tests/run.sh installs; build first: sh tests/run.sh --quick
# SPDX-License-Identifier: GPL-3.0-or-later
set -eu
cd "$(dirname "$0")/.."
build=${1:-build-test}
[ $# = 0 ] || shift
[ -x "$build/src/bench/leafwend" ] || { echo "pictures.sh: $build/src/bench/leafwend is not built" >&2; exit 1; }

TZ=UTC LEAFWEND=$build/src/bench/leafwend LEAFWEND_CLI=$build/src/cli/leafwend-cli LEAFWEND_DATA=$PWD/data \
  GSETTINGS_SCHEMA_DIR=$build/data DESK_SCREEN=1400x900 \
  tests/window/desk.sh /usr/bin/python3 docs/pictures.py "$PWD/docs" "$@"
