#!/usr/bin/env python3
"""Is what DEVELOPERS.md, README.md and resources/guide.md say so? Run as: python3 tests/documents/check.py [FOLDER]

What stands in backticks or in a block of code must be a path that exists, a file that the program writes, an option that
its script or program takes, or a name that the sources have; what stands in the tables of rooms, labels and defaults must
be what rooms.cmake, tests/CMakeLists.txt and the constants say, and nothing of theirs may be missing. Paths in comments of
the sources must exist too, and no source may be longer than DEVELOPERS.md says. Prints each fault as FILE:LINE: sentence,
and fails if there is one.
"""

import itertools
import pathlib
import re
import sys

sys.dont_write_bytecode = True
from sources import (FOLDERS, SCRIPTS, Tree, blocks, commands_of, exists, labels_of, number, options_of,  # noqa: E402
                     paths_in_comments, table, values_of)

DEVELOPERS, README, GUIDE = "DEVELOPERS.md", "README.md", "resources/guide.md"
MOST_LINES, MOST_COLUMNS = 250, 125  # of DEVELOPERS.md, so that it is read as a whole
OUTSIDE = {"apt-get", "ccache", "clang-format", "clang-tidy", "cmake", "cpack", "dpkg-query", "pdftoppm", "sudo",
           "~/.config"}
OUTSIDE_OPTIONS = {"--gtest_filter"}
PLACEHOLDERS = {"LABEL": "unit", "ROOM": "base"}  # with what stands for each where a name is looked for

# What is said in sentences: a file, a pattern whose group is a number, and the constant that it must equal.
SAID = [
    (GUIDE, r"window computes (\w+) nights", "kShortestRun"),
    (GUIDE, r"longest ramp plus (\w+)[;.]", "kAfterRamp"),
    (GUIDE, r"Without `--days` it runs (\w+) days", "kShortestRun"),
    (GUIDE, r"longest\s+ramp plus (\w+) where that", "kAfterRamp"),
    (GUIDE, r"come from one run \(`--members (\w+)`", "WindowOptions::members"),
    (GUIDE, r"`--members` \(([\d,]+)\) is how many those are", "PlanOptions::members"),
    (GUIDE, r"what to measure first: ([\d,]+) ponds", "kMembersToMeasure"),
    ("app/cli_*", r"Layers of the water[^\"]*\(default (\d+)\)", "Resolution::layers"),
    ("app/cli_*", r"Longest time step[^\"]*\(default (\d+)\)", "Resolution::largestStep"),
    ("app/cli_*", r"Ponds like this one to run, [^\"]*\(default (\d+)\)", "kMembersToMeasure"),
    ("app/cli_*", r"the answer is reported, [^\"]*\(default (\d+)\)", "PlanOptions::members"),
    ("app/cli_*", r"the ramp may take below the stress line, [^\"]*\(default ([\d.]+)\)", "PlanOptions::chance"),
    ("app/cli_*", r"\(default (\d+); \d+ for today and review\)", "FitOptions::members"),
    ("app/cli_*", r"\(default \d+; (\d+) for today and review\)", "TodayOptions::members"),
    ("app/cli_*", r"Days to run[^\"]*default: (\d+) or the longest ramp plus \d+\)", "kShortestRun"),
    ("app/cli_*", r"Days to run[^\"]*default: \d+ or the longest ramp plus (\d+)\)", "kAfterRamp"),
    ("app/window_options.cpp", r"Ponds like this one that the papers draw \((\d+)\)", "WindowOptions::members"),
]
SPAN = re.compile(r"`([^`]+)`")


class Check:
    def __init__(self, tree):
        self.tree = tree
        self.faults = []
        self.options = options_of(tree)
        self.commands = commands_of(tree)
        self.named = {script: set() for script in SCRIPTS}  # options of scripts that DEVELOPERS.md names

    def fault(self, page, line, sentence):
        self.faults.append(f"{page}:{line}: {sentence}")

    def all(self):
        for page in (DEVELOPERS, README, GUIDE):
            self.page(page)
        self.size()
        self.lengths()
        self.scripts()
        self.labels()
        for part in ("engine", "widgets"):
            self.rooms(part)
        self.picture()
        self.defaults()
        self.comments()
        return self.faults

    def page(self, page):
        # A span may go on in the next line, but not in the next row, point or paragraph.
        start, lines = 1, []
        for line, language, part in [*blocks(self.tree.text(page)), (0, None, "")]:
            if language is not None or re.match(r"[|#]|- |\d+[.] |$", part):
                self.spans(page, start, "\n".join(lines))
                start, lines = line, []
            if language is None:
                lines.append(part)
            else:
                self.block(page, line, language, part)
                start = line + part.count("\n") + 2

    def spans(self, page, start, text):
        if text.count("`") % 2 == 1:
            self.fault(page, start + text.count("\n", 0, text.rindex("`")), "a backtick has no other one.")
        for found in SPAN.finditer(text):
            self.span(page, start + text.count("\n", 0, found.start()), " ".join(found[1].split()))
        for found in re.finditer(r"\]\(([^)#:]+)\)", text):
            if not exists(self.tree, found[1]):
                self.fault(page, start + text.count("\n", 0, found.start()), f"there is no {found[1]}.")

    def block(self, page, start, language, text):
        for offset, line in enumerate(text.split("\n")):
            line = re.sub(r"\s#\s.*$", "", line)
            if language == "toml":
                keys = re.match(r"\[*([\w.]+)\]*(?=\s*(?:=|$))", line)
                for word in keys[1].split(".") if keys else []:
                    if not self.tree.has_word(word):
                        self.fault(page, start + offset, f"the sources have no key {word}.")
            elif line.startswith(("bash ", "build/")):
                self.command(page, start + offset, line)

    def command(self, page, line, text):
        """A line as it is typed: what is called, its options, and its files."""
        words = re.sub(r'"[^"]*"', "TEXT", text).split()
        words = words[1:] if words[0] == "bash" else words
        called = words[0].removeprefix("build/")
        if called in self.commands:
            called = "dawnline-cli"
        elif called == "dawnline-cli" and len(words) > 1 and words[1] not in self.commands:
            self.fault(page, line, f"dawnline-cli has no command {words[1]}.")
        if words[0] in OUTSIDE:
            return
        if called not in self.options:
            self.path(page, line, words[0])
        for word in words[1:]:
            if word.startswith("--"):
                self.option(page, line, called, word.split("=")[0])
            elif "/" in word:
                self.path(page, line, word)

    def option(self, page, line, called, option):
        if option in OUTSIDE_OPTIONS:
            return
        if called in SCRIPTS and page == DEVELOPERS:
            self.named[called].add(option)
        if option not in self.options.get(called, set().union(*self.options.values())):
            self.fault(page, line, f"{called or 'no program'} takes {'no' if called else 'an'} option {option}.")

    def span(self, page, line, span):
        span = span.strip('"')
        first = span.split()[0]
        if first in OUTSIDE:
            return
        if first.startswith("--"):
            self.option(page, line, "", first.split("=")[0])
        elif first == "bash" or first in self.options or first.startswith("build/") or (
                " " in span and first in self.commands):
            self.command(page, line, span)
        elif "/" in span or re.search(r"^\.|\*|\.(h|cpp|csv|toml|ics|zip|md|py|cmake|txt|ini|bak)$", span):
            self.path(page, line, span)
        else:
            self.name(page, line, span)

    def path(self, page, line, path):
        tree = self.tree
        if path.startswith("build"):
            # What is built there: a target, or a folder that a script or CMake names.
            for part in path.rstrip("/").split("/"):
                for placeholder, example in PLACEHOLDERS.items():
                    part = part.replace(placeholder, example)
                if not tree.has_text(part):
                    self.fault(page, line, f"nothing is built that is called {part} ({path}).")
        elif exists(tree, path) or re.fullmatch(r"\.\w+", path) and exists(tree, "*" + path):
            return
        elif path.startswith(tuple(folder + "/" for folder in FOLDERS)):
            self.fault(page, line, f"there is no {path}.")
        elif not all(tree.has_text(part) for part in path.removesuffix(".bak").split("/")) or (
                path.endswith(".bak") and not tree.has_text(".bak")):
            self.fault(page, line, f"there is no {path}, nor does the program name it.")

    def name(self, page, line, name):
        """A word of the code: a function, type, constant, key, label or room."""
        bare = re.sub(r"\(.*\)$|=[\w.]+$|^\[+|\]+$", "", name)
        if bare.startswith("std::"):
            return
        if re.fullmatch(r"[\w-]+", bare) and "-" in bare:
            known = self.tree.has_text(bare)
        else:
            known = re.fullmatch(r"\w+(?:(?:::|\.| )\w+)*", bare) and self.tree.has_word(
                *re.split(r"::|\.| ", bare))
        if not known:
            self.fault(page, line, f"the sources have no {name}.")

    def size(self):
        lines = self.tree.text(DEVELOPERS).rstrip("\n").split("\n")
        if len(lines) > MOST_LINES:
            self.fault(DEVELOPERS, len(lines), f"it has {len(lines)} lines, but at most {MOST_LINES} are read.")
        for line, text in enumerate(lines, 1):
            if len(text) > MOST_COLUMNS:
                self.fault(DEVELOPERS, line, f"it has {len(text)} characters, not at most {MOST_COLUMNS}.")

    def lengths(self):
        """Sources of C++ are as short as DEVELOPERS.md says."""
        said = re.search(r"A file has at most (\d+) lines", self.tree.text(DEVELOPERS))
        if not said:
            self.fault(DEVELOPERS, 1, "it does not say how many lines a file may have.")
            return
        for path in self.tree.code:
            lines = self.tree.text(path).count("\n")
            if path.endswith((".h", ".cpp")) and lines > int(said[1]):
                self.fault(path, lines, f"it has {lines} lines, not at most {said[1]}.")

    def scripts(self):
        for script in SCRIPTS:
            taken = self.options[script]
            for option in sorted(taken - self.named[script]):
                self.fault(DEVELOPERS, 1, f"it does not name {script} {option}.")
            told = set(re.findall(r"(?m)^#.*?%s (--[a-z-]+)" % script, self.tree.text(script)))
            for option in sorted(told ^ (taken - {"--help"})):
                self.fault(script, 1, f"its head and what it takes differ by {option}.")

    def labels(self):
        given = labels_of(self.tree)
        rows = table(self.tree.text(DEVELOPERS), "label")
        named = {cells[0].strip("`"): line for line, cells in rows}
        for label in sorted(set(named) - given):
            self.fault(DEVELOPERS, named[label], f"tests/CMakeLists.txt gives no label {label}.")
        for label in sorted(given - set(named)):
            self.fault(DEVELOPERS, rows[0][0] if rows else 1, f"it does not name the label {label}.")
        told = re.search(r"--label needs a label: ([^.\"]*)", self.tree.text("tests/run"))
        for label in sorted(set(re.findall(r"\w+", told[1])) - {"or"} ^ given) if told else []:
            self.fault("tests/run", 1, f"its labels and those of tests/CMakeLists.txt differ by {label}.")
        for found in re.finditer(r"label `(\w+)`", self.tree.text(DEVELOPERS)):
            if found[1] not in given:
                line = self.tree.text(DEVELOPERS).count("\n", 0, found.start()) + 1
                self.fault(DEVELOPERS, line, f"tests/CMakeLists.txt gives no label {found[1]}.")

    def arrows(self, part):
        """Rooms in the order of rooms.cmake, each with the rooms that it may include."""
        return {name: allowed.split()
                for name, allowed in re.findall(r'"(\w+):([^"]*)"', self.tree.text(part + "/rooms.cmake"))}

    def rooms(self, part):
        above, rows = [], table(self.tree.text(DEVELOPERS), "room of the " + part)
        arrows = self.arrows(part)
        if [cells[0].strip("`") for _, cells in rows] != list(arrows):
            self.fault(DEVELOPERS, rows[0][0] if rows else 1, f"{part}/rooms.cmake has other rooms: {', '.join(arrows)}.")
            return
        for line, cells in rows:
            room = cells[0].strip("`")
            said = above if cells[2] == "all above" else re.findall(r"\w+", cells[2])
            if said != arrows[room]:
                self.fault(DEVELOPERS, line, f"{part}/{room} may include {' '.join(arrows[room]) or 'no other room'}.")
            above = above + [room]

    def picture(self):
        """The rows of the picture: each room of a part once, and behind an arrow what the room before it may include."""
        drawn = next(((line, text) for line, language, text in blocks(self.tree.text(DEVELOPERS)) if "->" in text
                      and language), (1, ""))
        for part in ("engine", "widgets"):
            arrows, seen = self.arrows(part), set()
            for row in re.findall(r"(?m)^(?:%s) +(.*)$" % ("engine" if part == "engine" else "widgets|papers"), drawn[1]):
                steps = [re.findall(r"\w+", step) for step in row.split("->")]
                for before, after in zip(steps, steps[1:]):
                    seen.update(before, set(after) & set(arrows))
                    for one, other in itertools.product(before, after):
                        if other not in arrows.get(one, []) and (part, one, other) != ("widgets", "document", "engine"):
                            self.fault(DEVELOPERS, drawn[0], f"{part}/rooms.cmake has no arrow from {one} to {other}.")
            for room in sorted(set(arrows) - seen):
                self.fault(DEVELOPERS, drawn[0], f"the picture has no room {room} of {part}.")

    def defaults(self):
        rows = table(self.tree.text(DEVELOPERS), "default")
        if not rows:
            self.fault(DEVELOPERS, 1, "it has no table of defaults.")
        for line, cells in rows:
            self.value(DEVELOPERS, line, cells[1], cells[2].strip("`"))
        for pattern, said, name in SAID:
            # Texts of the program are put together of pieces.
            texts = [(path, re.sub(r'"\s*"', "", self.tree.text(path))) for path in self.tree.files(pattern)]
            found = [(path, one, text) for path, text in texts for one in re.finditer(said, text)]
            if not found:
                self.fault(pattern, 1, f"it no longer says {said}, which is to equal {name}.")
            for path, one, text in found:
                self.value(path, text.count("\n", 0, one.start()) + 1, one[1], name)

    def value(self, page, line, said, name):
        values = values_of(self.tree, name)
        if values != {number(said)}:
            given = " and ".join(f"{one:g}" for one in sorted(values)) or "nothing"
            self.fault(page, line, f"it says {said}, but {name} is {given}.")

    def comments(self):
        for path in self.tree.code:
            if not path.endswith((".h", ".cpp")):
                continue
            for line, found in paths_in_comments(self.tree.text(path)):
                if not exists(self.tree, found) and not exists(self.tree, found + ".h"):
                    self.fault(path, line, f"there is no {found}.")


def faults_of(root, changed=None):
    return Check(Tree(root, changed)).all()


if __name__ == "__main__":
    found = faults_of(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2])
    print("\n".join(found) or "What the pages say is so.")
    sys.exit(1 if found else 0)
