#!/bin/sh
# run.sh [--quick]: build all of Leafwend with warnings as errors and run every test; then again
# with sanitizers, and the floors leaf and season under valgrind (--quick leaves those two out).
# The last line is the count of all runs together; the exit status is 0 only if nothing failed.
# SPDX-License-Identifier: GPL-3.0-or-later
set -u
quick=
case ${1:-} in
  '') ;;
  --quick) quick=yes ;;
  *) echo 'usage: tests/run.sh [--quick]' >&2; exit 2 ;;
esac
cd "$(dirname "$0")/.." || exit 2
top=$PWD

failed=
# Runs what it is given; a failure is told, remembered, and does not stop the rest.
step () {
  echo "== $*"
  "$@" || { echo "== failed: $*"; failed=yes; return 1; }
}

# build DIR OPTION...: set up or refresh, then compile. Old logs must not be counted again.
build () {
  dir=$1
  shift
  rm -f "$dir"/meson-logs/testlog*
  if [ -f "$dir/build.ninja" ]; then
    step meson setup --reconfigure "$dir" "$@" >/dev/null
  else
    step meson setup "$dir" "$@"
  fi && step ninja -C "$dir"
}

finish () {
  /usr/bin/python3 tests/count.py ${failed:+--failed} "$@"
  exit
}

step sh data/packages.sh build desk || finish

build build-test -Dwerror=true || finish
step meson test -C build-test --no-rebuild --print-errorlogs --no-suite window
# Windows wait more than they work, and each has a screen of its own.
step meson test -C build-test --no-rebuild --print-errorlogs --suite window --num-processes 3 --logbase testlog-window
[ -z "$quick" ] || finish build-test

step meson test -C build-test --no-rebuild --print-errorlogs --setup valgrind --logbase testlog-valgrind \
  --suite leaf --suite season

if build build-sanitize -Db_sanitize=address,undefined -Db_lundef=false; then
  export ASAN_OPTIONS=detect_leaks=1:abort_on_error=1
  export LSAN_OPTIONS="suppressions=$top/tests/suppress/leaks.txt:print_suppressions=0"
  export UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
  step meson test -C build-sanitize --no-rebuild --print-errorlogs -t 4 \
    --no-suite window --no-suite lint --no-suite bench --no-suite peers
fi

finish build-test build-sanitize
