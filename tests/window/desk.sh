#!/bin/sh
# desk.sh COMMAND...: run COMMAND in front of a screen that nobody sees, with a window manager, a
# session bus, accessibility and an empty home. Ends all that it or COMMAND started; the exit status
# is COMMAND's, 124 when it took longer than DESK_SECONDS, 2 when the desk could not be set up.
# SPDX-License-Identifier: GPL-3.0-or-later
set -u
[ $# -gt 0 ] || { echo 'usage: desk.sh COMMAND...' >&2; exit 2; }

desk=$(mktemp -d "${TMPDIR:-/tmp}/leafwend-desk.XXXXXX") || exit 2
started=
command=

fail () {
  echo "desk.sh: $1" >&2
  [ -z "${2:-}" ] || cat "$2" >&2
  exit 2
}

# Tries a command for ten seconds until it succeeds.
await () {
  tries=0
  until "$@" >/dev/null 2>&1; do
    tries=$((tries + 1))
    [ "$tries" -lt 200 ] || return 1
    sleep 0.05
  done
}

# Asks the process or, written -N, the group to end; after two seconds it has to.
end () {
  kill -TERM "$1" 2>/dev/null || return 0
  tries=0
  while kill -0 "$1" 2>/dev/null && [ "$tries" -lt 40 ]; do
    tries=$((tries + 1))
    sleep 0.05
  done
  kill -KILL "$1" 2>/dev/null
}

clear_away () {
  trap - EXIT
  [ -z "$command" ] || end "-$command"
  for process in $started; do
    end "$process"
    wait "$process" 2>/dev/null
  done
  rm -rf "$desk"
}
trap clear_away EXIT
trap 'exit 130' INT
trap 'exit 143' TERM HUP

for tool in Xvfb openbox xprop dbus-daemon gdbus timeout; do
  command -v "$tool" >/dev/null || fail "$tool is not installed; sh data/packages.sh desk installs it"
done
a11y=
for launcher in /usr/libexec/at-spi-bus-launcher /usr/lib/at-spi2-core/at-spi-bus-launcher; do
  [ ! -x "$launcher" ] || a11y=$launcher
done
[ -n "$a11y" ] || fail 'at-spi2-core is not installed; sh data/packages.sh desk installs it'

# Nothing of the user's own session or settings gets in.
unset DISPLAY WAYLAND_DISPLAY XAUTHORITY XDG_CURRENT_DESKTOP DESKTOP_STARTUP_ID GTK_THEME GTK_DEBUG \
  GTK_MODULES GTK_IM_MODULE AT_SPI_BUS_ADDRESS DBUS_SESSION_BUS_ADDRESS DBUS_STARTER_ADDRESS SESSION_MANAGER
for room in config data cache state; do
  mkdir -p "$desk/home/$room"
done
mkdir -m 700 "$desk/run"
export HOME="$desk/home" XDG_RUNTIME_DIR="$desk/run" XDG_CONFIG_HOME="$desk/home/config"
export XDG_DATA_HOME="$desk/home/data" XDG_CACHE_HOME="$desk/home/cache" XDG_STATE_HOME="$desk/home/state"
export LC_ALL="${DESK_LOCALE:-C.UTF-8}" GSETTINGS_BACKEND=memory GIO_USE_VFS=local
export GDK_BACKEND=x11 GSK_RENDERER="${GSK_RENDERER:-cairo}" GTK_A11Y=atspi

# The X server finds a free display itself. Without -noreset it would start over, and lose the window
# manager, when the first client leaves.
Xvfb -displayfd 3 -screen 0 "${DESK_SCREEN:-1280x800}x24" -dpi 96 -noreset -nolisten tcp \
  3>"$desk/display" >"$desk/x.log" 2>&1 &
started="$! $started"
await test -s "$desk/display" || fail 'the X server did not start' "$desk/x.log"
DISPLAY=:$(cat "$desk/display")
export DISPLAY

DBUS_SESSION_BUS_ADDRESS=unix:path=$desk/run/bus
export DBUS_SESSION_BUS_ADDRESS
dbus-daemon --session --nofork --nopidfile --address="$DBUS_SESSION_BUS_ADDRESS" >"$desk/bus.log" 2>&1 &
started="$! $started"
await test -S "$desk/run/bus" || fail 'the session bus did not start' "$desk/bus.log"

"$a11y" --launch-immediately >"$desk/a11y.log" 2>&1 &
started="$! $started"
await gdbus call --session --dest org.a11y.Bus --object-path /org/a11y/bus --method org.a11y.Bus.GetAddress ||
  fail 'the accessibility bus did not start' "$desk/a11y.log"

# A window manager that keeps no key or drag for itself: all go to the program.
cat >"$desk/openbox.xml" <<'END'
<openbox_config xmlns="http://openbox.org/3.4/rc">
  <focus><focusNew>yes</focusNew></focus>
  <mouse>
    <context name="Client">
      <mousebind button="Left" action="Press"><action name="Focus"/><action name="Raise"/></mousebind>
    </context>
  </mouse>
</openbox_config>
END
openbox --sm-disable --config-file "$desk/openbox.xml" >"$desk/wm.log" 2>&1 &
started="$! $started"
await sh -c 'xprop -root _NET_SUPPORTING_WM_CHECK | grep -q 0x' ||
  fail 'the window manager did not start' "$desk/wm.log"

# timeout makes a process group of its own, which holds all that COMMAND starts.
timeout -k 5 "${DESK_SECONDS:-290}" "$@" &
command=$!
wait "$command"
