#!/bin/sh
# packages.sh SET...: see that the Debian packages of each SET are installed; install what is
# missing. The sets: "build" builds and runs Leafwend, "desk" is for its tests (an off-screen
# desk, valgrind, validators), "bench" holds what a benchmark compares it with. Says what to type,
# and fails, where it may not install.
# SPDX-License-Identifier: GPL-3.0-or-later
set -u

build='gcc libc6-dev pkg-config meson ninja-build gettext desktop-file-utils
  libgtk-4-dev libgtk-4-bin libglib2.0-dev libxml2-dev libgsl-dev libsundials-dev
  librsvg2-common fonts-dejavu-core'
desk='xvfb openbox xdotool imagemagick x11-utils dbus-daemon libglib2.0-bin at-spi2-core
  python3 python3-gi gir1.2-atspi-2.0 python3-numpy python3-scipy valgrind libc6-dbg
  appstream libxml2-utils shared-mime-info poppler-utils locales shellcheck git'
bench='r-base-core r-cran-desolve'

wanted=
for set in "$@"; do
  case $set in
    build) wanted="$wanted $build" ;;
    desk) wanted="$wanted $desk" ;;
    bench) wanted="$wanted $bench" ;;
    *) echo "packages.sh: no set is called \"$set\"; there are build, desk and bench" >&2; exit 2 ;;
  esac
done

if ! command -v dpkg-query >/dev/null; then
  echo "packages.sh: not Debian, so nothing was checked; needed (Debian's names):$wanted" >&2
  exit 0
fi

# shellcheck disable=SC2086 # lists of names
have=" $(dpkg-query -W -f '${Package}=${db:Status-Status} ' $wanted 2>/dev/null)"
missing=
for name in $wanted; do
  case $have in
    *" $name=installed "*) ;;
    *) missing="$missing $name" ;;
  esac
done
[ -n "$missing" ] || exit 0

by_hand () {
  echo "packages.sh: $1. Install the packages by" >&2
  echo "  apt-get update && apt-get install --no-install-recommends$missing" >&2
  exit 1
}

if [ "$(id -u)" = 0 ]; then
  root=
elif command -v sudo >/dev/null && { [ -t 0 ] || sudo -n true 2>/dev/null; }; then
  root=sudo
else
  by_hand 'packages are missing, and only root may install them'
fi

apt () {
  $root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o DPkg::Lock::Timeout=300 "$@" </dev/null >&2
}

echo "packages.sh: installing$missing" >&2
# An index that cannot be fetched anew may still do.
apt update || echo 'packages.sh: apt-get update failed' >&2
# shellcheck disable=SC2086
apt install -y --no-install-recommends $missing || by_hand 'apt-get could not install all packages'
