"""The end of the desktop's session: it is asked to wait while there are unsaved changes, and no longer."""
# SPDX-License-Identifier: GPL-3.0-or-later
import threading

import gi

import tap
from bench import LEAFWEND, Bench

gi.require_version("Gio", "2.0")
from gi.repository import Gio, GLib  # noqa: E402

NAME, PATH = "org.gnome.SessionManager", "/org/gnome/SessionManager"
CLIENT = PATH + "/Client1"
LOGOUT = 1
MANAGER = Gio.DBusNodeInfo.new_for_xml("""<node><interface name="org.gnome.SessionManager">
  <method name="RegisterClient"><arg type="s" direction="in"/><arg type="s" direction="in"/>
    <arg type="o" direction="out"/></method>
  <method name="Inhibit"><arg type="s" direction="in"/><arg type="u" direction="in"/><arg type="s" direction="in"/>
    <arg type="u" direction="in"/><arg type="u" direction="out"/></method>
  <method name="Uninhibit"><arg type="u" direction="in"/></method>
  <method name="UnregisterClient"><arg type="o" direction="in"/></method>
</interface></node>""").interfaces[0]
asked = {}  # what waits: flags and why, by cookie


def call_cb(bus, sender, path, interface, method, arguments, invocation):
    answer = None
    if method == "RegisterClient":
        answer = GLib.Variant("(o)", (CLIENT,))
    elif method == "Inhibit":
        cookie = 1 + max(asked, default=0)
        asked[cookie] = arguments.unpack()[2:]
        answer = GLib.Variant("(u)", (cookie,))
    elif method == "Uninhibit":
        asked.pop(arguments.unpack()[0])
    invocation.return_value(answer)


def look_after_sessions(ready):
    """As a desktop does, in a thread of its own."""
    context = GLib.MainContext()
    context.push_thread_default()
    bus = Gio.DBusConnection.new_for_address_sync(
        Gio.dbus_address_get_for_bus_sync(Gio.BusType.SESSION, None),
        Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION, None, None)
    bus.register_object(PATH, MANAGER, call_cb, None, None)
    bus.call_sync("org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus", "RequestName",
                  GLib.Variant("(su)", (NAME, 0)), None, Gio.DBusCallFlags.NONE, -1, None)
    ready.set()
    GLib.MainLoop(context).run()


started = threading.Event()
threading.Thread(target=look_after_sessions, args=(started,), daemon=True).start()
assert started.wait(10)
desk = Bench().open()


@tap.case
def unsaved_changes_hold_the_session():
    """With a change in hand the session is asked to wait, and why; once it is saved, no longer."""
    tap.equal(asked, {}, "what waits without changes")
    desk.key("ctrl+r")
    desk.wait_for(lambda: asked, "the session to be asked to wait")
    (why, flags), = asked.values()
    assert flags & LOGOUT and "not saved" in why, (why, flags)
    desk.save()
    desk.wait_for(lambda: not asked, "the session to be let go")


@tap.case
def a_closed_window_holds_nothing():
    """A window that was closed without saving lets the session go."""
    desk.key("ctrl+r")
    desk.wait_for(lambda: asked, "the session to be asked to wait")
    desk.key("ctrl+w")
    desk.act(desk.get("push button", "Discard changes"))
    desk.wait_for(lambda: not desk.is_running(), "the end")
    desk.wait_for(lambda: not asked, "the session to be let go")
    desk.start(LEAFWEND, [desk.path])


tap.main(desk.tree)
