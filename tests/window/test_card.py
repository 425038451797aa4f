"""The wall card's window by pointer and keys: it shows what it will print, follows the batch, takes signs as edits, prints
and saves; and a picture of the board is saved from the menu."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import shutil
import subprocess
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "12 long wither, gentle pan"
desk = Bench().open(batch=BATCH)


def act(action, name):
    """An action of the main window on a file in the test's folder."""
    path = os.path.join(desk.folder, name)
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1",
                    "--method", "org.gtk.Actions.Activate", action, "[<b'%s'>]" % path, "{}"],
                   check=True, stdout=subprocess.DEVNULL)
    return path


def window():
    return next((w for w in desk.windows() if desk.name_of(w).startswith("Wall card")), None)


def preview():
    return desk.get("image", re.compile("^Preview of the wall card"), under=desk.wait_for(window, "the card's window"))


def says(*words, seconds=10):
    """Waits until the preview's description has all the words; the description."""
    told = {}

    def all_there():
        told["text"] = preview().get_description() or ""
        return all(word in told["text"] for word in words)
    try:
        desk.wait_for(all_there, "the card to say %r" % (words,), seconds)
    except AssertionError as missed:
        raise AssertionError("%s\n%s" % (missed, told.get("text"))) from missed
    return told["text"]


def focus(name, role=None):
    """Goes to a field of the card's window by Tab."""
    def field():
        return next((n for n in desk.find_all(role, name, under=window()) if n.get_role_name() != "label"), None)
    node = desk.wait_for(field, name)
    for _ in range(40):
        if any(desk.has(n, "focused") for n in desk.walk(node)):
            return node
        desk.key("Tab")
    raise AssertionError("Tab never reached " + name)


def signs():
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return [step.findtext(NS + "sign") for step in batch.iter(NS + "step")]


def pdf(program, path):
    if shutil.which(program) is None:
        raise tap.Skip(program + " is not installed")
    words = [program, path] + (["-"] if program == "pdftotext" else [])
    return subprocess.run(words, check=True, stdout=subprocess.PIPE, text=True).stdout


@tap.case
def opens_and_tells():
    """Its key opens it; the preview tells a screen reader all that it shows, advice too."""
    desk.key("ctrl+p")
    told = says(BATCH, "20 h", "200 °C", "6.36 kg", "10 kg fresh leaf should now weigh 7.91 kg", "carbon monoxide",
                "Follow local codes and licensed practice.", "If it weighs 200 g more", seconds=20)
    assert told.index("20 h") < told.index("200 °C"), told
    tap.equal(desk.name_of(preview()), "Preview of the wall card, 1 page", "its name")
    nameless = [n.get_role_name() for n in desk.walk(window())
                if n.get_role_name() in ("push button", "text", "spin button", "check box", "combo box")
                and not desk.name_of(n)]
    tap.equal(nameless, [], "fields without a name")


@tap.case
def a_sign_is_one_edit():
    """A sign typed for a step is on the card and in the file; one undo takes it back."""
    before = signs()
    field = focus("sign of step 2, fix in pan")
    tap.equal(desk.text_of(field), before[1], "what the field holds")
    desk.key("ctrl+a")
    desk.type("the stem sings\n")
    says("Look for: the stem sings", "If it weighs")
    desk.key("Tab")
    desk.save()
    tap.equal(signs(), [before[0], "the stem sings"] + before[2:], "the signs")
    focus("Orientation")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.text_of(field) == before[1], "the field as it was")
    assert "sings" not in says("Look for: " + before[1])


@tap.case
def a_sign_left_is_kept():
    """A sign counts when its field is left, too."""
    focus("sign of step 1, wither")
    desk.key("ctrl+a")
    desk.type("limp")
    desk.key("Tab")
    says("Look for: limp")


@tap.case
def load_and_sheet():
    """Another load has other weights and the advice that goes with it; the batch sheet is a page more."""
    focus("Fresh leaf, kg")
    desk.key("ctrl+a")
    desk.type("24\n")
    says("24.0 kg fresh leaf", "19.0 kg", "10 kg fresh leaf should now weigh 7.91 kg", "If it weighs 500 g more", seconds=20)
    desk.click(desk.get("check box", re.compile("^With the batch sheet"), under=window()))
    says("next: time", "6.70 kg", "2 / 2")
    tap.equal(desk.name_of(preview()), "Preview of the wall card, 2 pages", "its name")


@tap.case
def paper_and_print():
    """Paper and direction are chosen by keys; what is printed is the card, on that paper."""
    focus("Paper")
    desk.key("space", "Down", "Down", "Return")
    desk.get("label", "Letter", under=window())
    focus("Orientation")
    desk.key("space", "Down", "Return")
    desk.get("label", "landscape", under=window())
    path = act("print-card", "printed.pdf")
    desk.wait_for(lambda: os.path.exists(path) and os.path.getsize(path) > 1000, "the print")
    told = pdf("pdfinfo", path)
    assert re.search(r"Page size:\s+792 x 612", told), told
    tap.equal("%s pages" % re.search(r"Pages:\s+(\d+)", told)[1], desk.name_of(preview()).split(", ")[1], "pages")
    words = " ".join(pdf("pdftotext", path).split())
    for word in (BATCH, "24.0 kg fresh leaf", "Look for: limp", "licensed practice"):
        assert word in words, (word, words)


@tap.case
def saves_by_suffix():
    """The name's suffix decides; a name without one is refused with the reason."""
    for name, begin in (("card.pdf", b"%PDF-"), ("card.svg", b"<?xml"), ("card.png", b"\x89PNG")):
        path = act("save-card", name)
        desk.get("label", re.compile("^Saved in .*" + name))
        with open(path, "rb") as file:
            tap.equal(file.read(len(begin)), begin, name)
    assert os.path.exists(os.path.join(desk.folder, "card-2.png"))
    assert BATCH in " ".join(pdf("pdftotext", os.path.join(desk.folder, "card.pdf")).split())
    act("save-card", "card.bmp")
    told = desk.get(None, re.compile("^The card was not saved"))
    desk.get(None, re.compile("pdf, .svg or .png"))
    desk.act(desk.get("push button", "Close", under=desk.window_of(told)))
    desk.wait_for(lambda: desk.find(None, re.compile("^The card was not saved")) is None, "the message gone")


@tap.case
def follows_the_batch():
    """A drag in the main window is on the card when it ends; Escape closes the card."""
    main = desk.windows()[0]
    x, y = desk.end_edge(2)
    desk._xdotool("windowactivate", "--sync", desk._x_windows()[0])
    desk.key("Escape")
    desk.wait_for(lambda: window() is None, "the card closed")
    desk.drag(x, y, x + 20, y, window=main)
    time = re.search(r"fix in pan, ([^,.]+)", desk.words(2))[1]
    assert time != "32 min", time
    desk.key("ctrl+p")
    says(time, "Look for: limp")
    desk.key("ctrl+w")
    desk.wait_for(lambda: window() is None, "the card closed")
    assert desk.is_running()


@tap.case
def picture_of_the_board():
    """The menu saves blocks and curves as a picture of the size asked for, and the curves as a table."""
    for name, size in (("board.png", (1600, 1000)), ("board.csv", None)):
        path = os.path.join(desk.folder, name)
        desk.wait_for(lambda: len(desk.windows()) == 1, "the other windows to close")
        desk.click(desk.blocks()[0])  # the window manager gives the keys to this window
        desk.key("alt+b")
        desk.get("menu item", re.compile("^Save a picture"))
        desk.key("u")
        desk.get("spin button", "Width, px")
        if size:
            desk.key("ctrl+a")
            desk.type("800\t")
            focus_height = desk.get("spin button", "Height, px")
            for _ in range(6):
                if any(desk.has(n, "focused") for n in desk.walk(focus_height)):
                    break
                desk.key("Tab")
            desk.key("ctrl+a")
            desk.type("500\t")
        desk.act(desk.get("push button", "Save as…"))
        desk.get("label", "Cancel")
        desk.key("ctrl+a")
        desk.type(path + "\n")
        desk.wait_for(lambda p=path: os.path.exists(p), path)
        desk.wait_for(lambda: desk.find("spin button", "Width, px") is None, "the window closed")
        with open(path, "rb") as file:
            head = file.read(24)
        if size:
            tap.equal((int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")), size, "pixels")
        else:
            assert head.startswith(b"batch,part,step,kind,min"), head


tap.main(desk.tree)
