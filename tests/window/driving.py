# SPDX-License-Identifier: GPL-3.0-or-later
"""Drives the real program from outside: through accessibility where that reaches, by pointer and keys where
it does not. Everything is waited for; nothing counts on a machine being quick."""
import os
import shutil
import signal
import subprocess
import sys
import time

import pyatspi

PATIENCE = 30.0


class Failure(Exception):
    pass


def wait_for(what, test, patience=PATIENCE):
    """The first true value that TEST gives; accessibility objects may vanish while they are looked at."""
    end = time.monotonic() + patience
    last = None
    while time.monotonic() < end:
        try:
            value = test()
            if value:
                return value
        except Exception as error:  # a widget that went away, a bus that is busy
            last = error
        time.sleep(0.1)
    raise Failure(f"waited in vain for {what}" + (f" ({last})" if last else ""))


def walk(node):
    yield node
    for i in range(node.childCount):
        child = node.getChildAtIndex(i)
        if child:
            yield from walk(child)


def xdotool(*words):
    return subprocess.run(["timeout", "20", "xdotool", *map(str, words)], check=True, capture_output=True, text=True).stdout


class Program:
    """One run of the program, and its main window."""

    def __init__(self, path, *arguments):
        self.process = subprocess.Popen([path, *arguments])
        self.app = wait_for("the program on the accessibility bus", self._find_app)
        self.frame = wait_for("the main window", self._find_frame)

    def _find_app(self):
        for app in pyatspi.Registry.getDesktop(0):
            if app and app.get_process_id() == self.process.pid:
                return app
        return None

    def _find_frame(self):
        for i in range(self.app.childCount):
            child = self.app.getChildAtIndex(i)
            if child and child.getRoleName() == "frame":
                return child
        return None

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def quit(self):
        """As the painter does; the program must end by itself, and well."""
        self.key("ctrl+q")
        wait_for("the end of the program", lambda: self.process.poll() is not None)
        if self.process.returncode != 0:
            raise Failure(f"the program ended with {self.process.returncode}")

    # Finding

    def find(self, role, name=None, under=None, patience=PATIENCE):
        def look():
            root = under or self.frame
            root.clear_cache()
            for node in walk(root):
                if node.getRoleName() == role and (name is None or node.name == name):
                    return node
            return None
        return wait_for(f"{role} “{name}”", look, patience)

    def has_label(self, words, under=None):
        root = under or self.frame
        root.clear_cache()
        return any(words in (node.name or "") for node in walk(root) if node.getRoleName() == "label")

    def dialog(self, title):
        """Another window of the program, by its title. Not for file choosers: listing windows while one closes
        can end GTK 4.8."""
        def look():
            self.app.clear_cache()
            for i in range(self.app.childCount):
                child = self.app.getChildAtIndex(i)
                if child and child.name == title and child.getRoleName() in ("frame", "dialog"):
                    return child
            return None
        return wait_for(f"the window “{title}”", look)

    # Doing

    def actions(self):
        self.frame.clear_cache()
        action = self.frame.queryAction()
        return [action.getName(i) for i in range(action.nActions)]

    def act(self, name):
        """A window action, as a menu or a key would start it; it must be enabled."""
        def go():
            action = self.frame.queryAction()
            for i in range(action.nActions):
                if action.getName(i) == name:
                    return action.doAction(i)
            return False
        wait_for(f"the action {name}", go)

    def press(self, name, under=None):
        """A button, by its accessible name."""
        def go():
            root = under or self.frame
            root.clear_cache()
            for node in walk(root):
                if node.getRoleName() == "push button" and node.name == name:
                    try:
                        action = node.queryAction()
                    except NotImplementedError:
                        continue
                    if action.nActions and action.doAction(0):
                        return True
            return False
        wait_for(f"the button “{name}”", go)

    def wait_for_focus(self, title=None):
        """Keys go to the window that has the focus, and that follows a dialog's end a moment later."""
        def has_it():
            name = xdotool("getactivewindow", "getwindowname").strip()
            return name == (title or self.frame.name)
        wait_for(f"the focus on “{title or self.frame.name}”", has_it)

    def key(self, *keys):
        self.wait_for_focus()
        xdotool("key", "--clearmodifiers", *keys)

    def type(self, text):
        xdotool("type", "--delay", "40", text)

    def click(self, node):
        """With the pointer: extents are the window's, and the window's contents begin within its shadow."""
        window = xdotool("getactivewindow").strip()
        box = node.queryComponent().getExtents(pyatspi.WINDOW_COORDS)
        xdotool("mousemove", "--window", window, box.x + box.width // 2 + 5, box.y + box.height // 2 + 5)
        xdotool("click", 1)

    def field(self, name, pane=None):
        """The text field called NAME; of the pane called PANE where several have one."""
        return self.find("text", name, under=pane and self.find("panel", pane))

    def set(self, name, text, pane=None):
        """Puts TEXT into a field as an assistive tool does: without the focus."""
        wait_for(f"the field “{name}”", lambda: self.field(name, pane).queryEditableText().setTextContents(text))

    def type_into(self, name, text, pane=None):
        """Types TEXT into a field with the keys, and Return."""
        self.click(self.field(name, pane))
        self.key("ctrl+a")
        self.type(text)
        self.key("Return")

    def value(self, name, pane=None):
        """What a field shows."""
        return self.text_of(self.field(name, pane))

    def text_of(self, node):
        text = node.queryText()
        return text.getText(0, text.characterCount)

    def choose_file(self, title, path):
        """Types PATH into the file chooser called TITLE, by keys alone."""
        self.wait_for_focus(title)
        time.sleep(0.5)  # the chooser takes the focus into its entry a moment after it is shown
        xdotool("key", "ctrl+a")
        self.type(path)
        xdotool("key", "Return")

    def show(self, out=sys.stderr):
        """The tree, for a log."""
        def lines(node, depth):
            yield "  " * depth + f"{node.getRoleName()} {node.name!r}"
            for i in range(node.childCount):
                child = node.getChildAtIndex(i)
                if child:
                    yield from lines(child, depth + 1)
        try:
            for line in lines(self.app, 0):
                print(line, file=out)
        except Exception as error:
            print(f"(no tree: {error})", file=out)


def run(scenarios):
    """drive-….py PROGRAM [SCENARIO]...: runs each; says which failed, and shows what the program showed."""
    path, wanted = sys.argv[1], sys.argv[2:]
    failed = 0
    for scenario in scenarios:
        if wanted and scenario.__name__ not in wanted:
            continue
        # Work that another scenario left is not this one's.
        shutil.rmtree(os.environ["XDG_STATE_HOME"], ignore_errors=True)
        programs = []

        def start(*arguments):
            programs.append(Program(path, *arguments))
            return programs[-1]
        try:
            scenario(start)
            print(f"ok {scenario.__name__}", flush=True)
        except (Failure, AssertionError, subprocess.CalledProcessError) as error:
            failed += 1
            print(f"not ok {scenario.__name__}: {type(error).__name__} {error}", flush=True)
            import traceback
            traceback.print_exc()
            for program in programs:
                if program.process.poll() is None:
                    program.show()
            if os.environ.get("SPV_TEST_SCREENSHOT"):
                subprocess.run(["import", "-window", "root", os.environ["SPV_TEST_SCREENSHOT"]])
        finally:
            for program in programs:
                if program.process.poll() is None:
                    program.kill()
    sys.exit(1 if failed else 0)
