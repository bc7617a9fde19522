# SPDX-License-Identifier: GPL-3.0-or-later
"""A painter's way through the real program, from New to the printed sheet, and what is left after a crash."""
import glob
import json
import os

from driving import Failure, run, wait_for, xdotool


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def panel_of(scheme, panel):
    return next(p for p in scheme["harness"]["panels"] if p["id"] == panel)


def kinds_of(scheme, panel):
    return [layer["kind"] for layer in scheme["designs"][panel]["layers"]]


def home(name):
    return os.path.join(os.environ["HOME"], name)


def is_label(program, words):
    wait_for(f"the words “{words}”", lambda: program.has_label(words))


def new_scheme(program, title):
    """From the first harness of the list."""
    program.press("New scheme…")
    dialog = program.dialog("New scheme")
    program.find("label", "These sizes are typical; measure your own figure with calipers.", under=dialog)
    program.find("text", "Title", under=dialog).queryEditableText().setTextContents(title)
    program.press("Create", under=dialog)
    program.find("label", "13 panels, all to one scale")


def go_to_panel(program, name):
    def there():
        return program.value("Name of the panel") == name
    for _ in range(20):
        if there():
            return
        program.act("win.next-panel")
    raise Failure(f"no panel “{name}”")


def add_layer(program, name):
    program.press("Add a layer")
    program.press(name)
    program.find("list", "Layers, topmost first")


def save_as(program, path):
    program.act("win.save-as")
    program.choose_file("Save scheme", path)
    wait_for(f"the file {path}", lambda: os.path.exists(path))
    wait_for("the end of the saving", lambda: not program.frame.name.startswith("•"))
    return read(path)


def design_from_new_to_saved_file(start):
    program = start()
    new_scheme(program, "Quarry Row Pikes")
    go_to_panel(program, "Kneepad, dexter")

    # The painter's own measures: by keys and through accessibility, with a comma and with a point.
    program.type_into("Width", "7,5", "Panel")
    wait_for("the width", lambda: program.value("Width", "Panel") == "7.50")
    program.set("Height", "8.25", "Panel")
    for layer in ("Per bend", "Check", "Jagged border"):
        add_layer(program, layer)
    program.set("Points", "5", "Measures")
    program.set("Depth", "1,2 mm", "Measures")
    wait_for("the depth", lambda: program.value("Depth", "Measures") == "1.20")

    path = home("quarry-row.scheme.json")
    scheme = save_as(program, path)
    assert scheme["title"] == "Quarry Row Pikes", scheme["title"]
    panel = panel_of(scheme, "kneepad-dexter")
    assert panel["outline"]["width"] == 7.5, panel["outline"]
    assert panel["outline"]["height"] == 8.25, panel["outline"]
    assert kinds_of(scheme, "kneepad-dexter") == ["per-bend", "check", "jagged-border"], scheme["designs"]
    border = scheme["designs"]["kneepad-dexter"]["layers"][2]
    assert border["measures"]["points"] == 5, border
    assert border["measures"]["depth"] == {"mm": 1.2}, border
    program.quit()


def a_charge_found_by_its_name(start):
    program = start()
    new_scheme(program, "Lantern Company")
    go_to_panel(program, "Kneepad, dexter")
    add_layer(program, "Field")

    # By keys alone: the list of kinds, the start of a word, Enter.
    program.key("ctrl+l")
    program.find("entry", "Search for a kind of layer")
    program.type("lant")
    program.find("push button", "Lantern")
    xdotool("key", "Return")
    program.find("push button", "Undo add “Lantern”")
    program.set("Number", "3", "Measures")
    is_label(program, "Smallest for your line: ")
    program.act("win.mirror-layer")
    program.find("push button", "Undo mirror layer")

    scheme = save_as(program, home("lanterns.scheme.json"))
    assert kinds_of(scheme, "kneepad-dexter") == ["field", "lantern"], scheme["designs"]
    lantern = scheme["designs"]["kneepad-dexter"]["layers"][1]
    assert lantern["measures"]["number"] == 3, lantern
    assert lantern["mirrored"] is True, lantern
    program.quit()


def a_blazon_becomes_the_layers(start):
    program = start()
    new_scheme(program, "Saltmarsh Wardens")
    go_to_panel(program, "Kneepad, dexter")
    program.key("ctrl+b")
    program.type("vert, a bend argent, a kraken sable")
    xdotool("key", "Return")
    is_label(program, "kraken")
    assert "win.undo" not in program.actions()
    # The cursor stands at the word that is wrong.
    for _ in range(len("kraken")):
        xdotool("key", "BackSpace")
    program.type("lanter")
    xdotool("key", "Tab")  # completes the word
    xdotool("key", "Return")
    program.find("push button", "Undo change blazon")
    scheme = save_as(program, home("blazon.scheme.json"))
    assert kinds_of(scheme, "kneepad-dexter") == ["field", "bend", "lantern"], scheme["designs"]
    assert [layer["tinctures"] for layer in scheme["designs"]["kneepad-dexter"]["layers"]] == [
        ["vert"], ["argent"], ["sable"]], scheme["designs"]
    program.quit()


def undo_and_redo(start):
    program = start()
    new_scheme(program, "Ashlar Guard")
    go_to_panel(program, "Kneepad, dexter")
    assert "win.undo" not in program.actions()
    add_layer(program, "Per bend")
    program.find("push button", "Undo add “Per bend”")
    add_layer(program, "Check")
    program.find("push button", "Undo add “Check”")
    program.key("ctrl+z")
    program.find("push button", "Redo add “Check”")
    program.key("ctrl+z")
    wait_for("nothing to undo", lambda: "win.undo" not in program.actions())
    program.key("ctrl+shift+z")
    program.find("push button", "Undo add “Per bend”")
    program.key("ctrl+y")
    program.find("push button", "Undo add “Check”")
    scheme = save_as(program, home("ashlar.scheme.json"))
    assert kinds_of(scheme, "kneepad-dexter") == ["per-bend", "check"], scheme["designs"]
    # Once more by its name, and without asking: the file is known now.
    program.key("Delete")
    program.find("push button", "Undo remove “Check”")
    program.key("ctrl+s")
    wait_for("the saved file", lambda: kinds_of(read(home("ashlar.scheme.json")), "kneepad-dexter") == ["per-bend"])
    program.quit()


def export_through_the_dialog(start):
    program = start()
    new_scheme(program, "Heron Ferry Guild")
    go_to_panel(program, "Kneepad, dexter")
    add_layer(program, "Per bend")
    program.act("win.export")
    dialog = program.dialog("Export sheets")
    program.press("Export", under=dialog)
    wait_for("the end of the export", lambda: program.has_label("written to", under=dialog), 120)
    sheets = glob.glob(home("heron-ferry-guild*.png"))
    assert len(sheets) == 1, os.listdir(os.environ["HOME"])
    with open(sheets[0], "rb") as file:
        start_of_file = file.read(26)
    # An A4 sheet at 600 dots an inch: 210 mm are 4961 pixels, 297 mm are 7016 (ISO 216, and 25.4 mm an inch).
    assert start_of_file[:8] == b"\x89PNG\r\n\x1a\n"
    assert int.from_bytes(start_of_file[16:20], "big") == 4961
    assert int.from_bytes(start_of_file[20:24], "big") == 7016
    program.press("Close", under=dialog)
    program.quit()


def kept_files():
    return glob.glob(os.path.join(os.environ["XDG_STATE_HOME"], "spolvero", "recovery", "*.scheme.json"))


def work_survives_a_kill(start):
    program = start()
    new_scheme(program, "Lantern Company")
    go_to_panel(program, "Kneepad, dexter")
    path = home("lantern.scheme.json")
    add_layer(program, "Per bend")
    save_as(program, path)
    before = open(path, "rb").read()
    add_layer(program, "Jagged border")
    wait_for("the kept work", kept_files)
    kept = kept_files()[0]
    wait_for("the edit in the kept work", lambda: kinds_of(read(kept), "kneepad-dexter") == ["per-bend", "jagged-border"])
    program.kill()
    assert open(path, "rb").read() == before, "the painter's own file must not be touched"

    program = start()
    is_label(program, "Unsaved work on “lantern.scheme.json” from ")
    program.press("Restore")
    wait_for("the restored scheme", lambda: program.frame.name == "• Lantern Company")
    program.act("win.save")
    wait_for("the saved file", lambda: kinds_of(read(path), "kneepad-dexter") == ["per-bend", "jagged-border"])
    wait_for("nothing kept", lambda: not kept_files())
    program.quit()

    program = start(path)
    wait_for("the scheme", lambda: program.frame.name == "Lantern Company")
    assert not program.has_label("Unsaved work") or not visible_bar(program)
    program.quit()


def visible_bar(program):
    import pyatspi
    return program.find("push button", "Restore").getState().contains(pyatspi.STATE_VISIBLE)


def work_survives_the_end_of_the_session(start):
    """The system ends the program at once after an edit: nothing waits for the pause that keeps work."""
    program = start()
    new_scheme(program, "Lantern Company")
    go_to_panel(program, "Kneepad, dexter")
    add_layer(program, "Check")
    wait_for("the edit", lambda: program.frame.name == "• Lantern Company")
    program.process.terminate()
    wait_for("the end of the program", lambda: program.process.poll() is not None)
    assert program.process.returncode == 0, program.process.returncode
    assert kinds_of(read(kept_files()[0]), "kneepad-dexter") == ["check"]

    # A window that closes keeps its work as well; what the bar offers can be thrown away.
    program = start()
    is_label(program, "Unsaved work from ")
    program.press("Discard")
    wait_for("nothing kept", lambda: not kept_files())
    program.quit()


def a_file_is_opened_by_the_chooser(start):
    program = start()
    new_scheme(program, "Saltmarsh Wardens")
    path = home("saltmarsh.scheme.json")
    save_as(program, path)
    program.quit()

    program = start()
    program.act("win.open")
    program.choose_file("Open scheme", path)
    wait_for("the scheme", lambda: program.frame.name == "Saltmarsh Wardens")
    assert program.has_label("~/saltmarsh.scheme.json")
    program.quit()


def a_broken_file_is_reported(start):
    path = home("broken.scheme.json")
    with open(path, "w", encoding="utf-8") as file:
        file.write('{\n  "spolvero": 1,\n  "title": oops\n}\n')
    program = start(path)
    dialog = wait_for("the message", lambda: next(
        (program.app.getChildAtIndex(i) for i in range(program.app.childCount)
         if program.app.getChildAtIndex(i).getRoleName() in ("dialog", "alert")), None))
    wait_for("the heading", lambda: program.has_label("“broken.scheme.json” could not be opened", under=dialog))
    wait_for("the place", lambda: program.has_label("broken.scheme.json:3:", under=dialog))
    program.kill()


if __name__ == "__main__":
    run([design_from_new_to_saved_file, a_charge_found_by_its_name, a_blazon_becomes_the_layers,
         undo_and_redo, export_through_the_dialog, work_survives_a_kill, work_survives_the_end_of_the_session,
         a_file_is_opened_by_the_chooser, a_broken_file_is_reported])
