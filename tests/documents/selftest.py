#!/usr/bin/env python3
"""Does check.py notice what is not so? Run as: python3 tests/documents/selftest.py [FOLDER]

The pages as they are must be without fault. Then one page or one source after another is changed, in memory, so that a page
no longer says what is so, and the complaint about it must come.
"""

import pathlib
import re
import sys

sys.dont_write_bytecode = True
from check import DEVELOPERS, GUIDE, MOST_COLUMNS, MOST_LINES, README, Tree, faults_of, table  # noqa: E402

root = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2])
tree = Tree(root)
failures = []


def expect(what, changed, complaint):
    """`changed`: new texts of files; `complaint`: a pattern that one of the faults must have."""
    for path, text in changed.items():
        if text == tree.text(path):
            failures.append(f"{what}: {path} is as it was, so nothing was tried.")
            return
    said = faults_of(root, changed)
    if not any(re.search(complaint, fault) for fault in said):
        failures.append(f"{what}: expected '{complaint}', got {said}")


def added(page, text, complaint):
    """A paragraph more at the end of a page."""
    line = tree.text(page).rstrip("\n").count("\n") + 3
    expect(f"{page} with {text}", {page: tree.text(page).rstrip("\n") + "\n\n" + text + "\n"},
           f"^{re.escape(page)}:{line}: {complaint}")


def replaced(path, old, new, complaint):
    """The first place of a pattern in a file."""
    expect(f"{path} with {new!r}", {path: re.sub(old, new, tree.text(path), count=1, flags=re.M)}, complaint)


def replaced_somewhere(pattern, old, new, complaint):
    """The same in the one file that has it."""
    for path in tree.files(pattern):
        if re.search(old, tree.text(path), re.M):
            replaced(path, old, new, complaint)
            return
    failures.append(f"No file of {pattern} has {old}, so nothing was tried.")


if found := faults_of(root):
    failures.append(f"The pages as they are: {found}")

# Paths.
for page in (DEVELOPERS, README):
    added(page, "`engine/base/no_such.h`", "there is no engine/base/no_such.h")
    added(page, "`build/no_such_program`", "nothing is built that is called no_such_program")
    added(page, "![A picture](resources/no_such.png)", "there is no resources/no_such.png")
    added(page, "`no_such.csv`", "there is no no_such.csv")
added(DEVELOPERS, "`engine/base/text.{h,cxx}`", "there is no engine/base/text")
added(DEVELOPERS, "`engine/ROOM/no_such_*.cpp`", "there is no engine/ROOM/no_such")
added(DEVELOPERS, "`LABEL_nothings` `tests/LABEL/*_nothing.cpp`", "there is no tests/LABEL")
added(DEVELOPERS, "`engine/no_such_room`", "there is no engine/no_such_room")
added(DEVELOPERS, "`two\nno_such`", "the sources have no two no_such")
added(DEVELOPERS, "An `odd one", "a backtick has no other one")
expect("a line after a block", {DEVELOPERS: tree.text(DEVELOPERS) + "\n```\na\nb\n```\n`noSuchThing`\n"},
       rf":{tree.text(DEVELOPERS).count(chr(10)) + 6}: the sources have no noSuchThing")
expect("a list", {DEVELOPERS: tree.text(DEVELOPERS) + "\n- A point `of\n  noSuchThing`\n"}, "have no of noSuchThing")
for page in (DEVELOPERS, README):
    expect("a block", {page: tree.text(page) + "\n```\nbash tests/no_such\n```\n"}, "there is no tests/no_such")
replaced_somewhere("engine/*/*.h", r"^#pragma once", "// As in engine/base/no_such.h\n#pragma once",
                   r"^engine/\S+:\d+: there is no engine/base/no_such.h")

# Names.
for name in ("noSuchFunction", "noSuchFunction(...)", "Resolution::noSuchMember", "kNoSuchConstant", "NoSuchType",
             "DAWNLINE_NO_SUCH=1", "no-such-target", "two no_such"):
    added(DEVELOPERS, f"`{name}`", "the sources have no " + re.escape(name))
added(README, "`no_such_key`", "the sources have no no_such_key")
added(README, "`[[no_such_table]]`", re.escape("the sources have no [[no_such_table]]"))
expect("a key in a block", {README: tree.text(README) + "\n```toml\nno_such_key = 1\n```\n"}, "no key no_such_key")

# Options and commands.
added(DEVELOPERS, "`tests/run --no-such`", "tests/run takes no option --no-such")
added(DEVELOPERS, "`app/run --full`", "app/run takes no option --full")
added(README, "`--no-such`", "no program takes an option --no-such")
added(README, "`build/dawnline --until X`", "dawnline takes no option --until")
added(README, "`fit --no-such`", "dawnline-cli takes no option --no-such")
added(README, "`build/dawnline-cli nothing pond.toml`", "dawnline-cli has no command nothing")
for script in ("app/run", "tests/run"):
    replaced(script, r"^(\s*)(--[a-z-]+)\)", r"\1--fresh-option)\n\1\2)", f"does not name {script} --fresh-option")
    replaced(script, r"^(\s*)--[a-z-]+\)", r"\1--other)", f"{script} takes no option --")
    replaced(script, r"^#   bash", f"#   bash {script} --untaken\n#   bash",
             "its head and what it takes differ by --untaken")

# Labels.
label = table(tree.text(DEVELOPERS), "label")[0][1][0].strip("`")
replaced(DEVELOPERS, rf"^\| `{label}` \|.*\n", "", f"does not name the label {label}")
replaced(DEVELOPERS, rf"^\| `{label}` \|", "| `no_such` |", "gives no label no_such")
added(DEVELOPERS, f"the label `{label}s`", f"tests/CMakeLists.txt gives no label {label}s")
replaced("tests/CMakeLists.txt", r"\Z", "\nadd_test_label(fresh 1)\n", "does not name the label fresh")
replaced("tests/CMakeLists.txt", r"\Z", "\nset_tests_properties(x PROPERTIES LABELS fresh)\n",
         "does not name the label fresh")
replaced("tests/CMakeLists.txt", r"\Z", "\nadd_runs(x fresh 1)\n", "does not name the label fresh")
replaced("tests/run", "needs a label: ", "needs a label: no_such, ", "labels .* differ by no_such")

# Defaults, said and given.
for line, cells in table(tree.text(DEVELOPERS), "default"):
    name = cells[2].strip("`")
    replaced(DEVELOPERS, rf"\| {re.escape(cells[1])} \| `{name}` \|", f"| 77 | `{name}` |",
             f":{line}: it says 77, but {name} is ")
replaced_somewhere("engine/*/*.h", r"int layers = \d+;", "int layers = 77;", "it says [0-9]+, but Resolution::layers is 77")
replaced_somewhere("engine/*/*.h", r"\bkMembersOfBand = \d+", "kMembersOfBand = 77", "but FitOptions::members is 77")
replaced(GUIDE, r"computes \d+ nights", "computes 77 nights", "it says 77, but kShortestRun is")
replaced(GUIDE, r"computes \d+ nights", "computes some nights of", "it says some, but kShortestRun is")
replaced(GUIDE, r"computes \d+ nights", "computes nights", "no longer says .*computes")
replaced_somewhere("app/cli_*", r"(Layers of the water.*default) \d+", r"\1 77", "it says 77, but Resolution::layers is")

# Rooms.
for part in ("engine", "widgets"):
    rooms = table(tree.text(DEVELOPERS), "room of the " + part)
    last, before = rooms[-1][1], rooms[-2][1]
    replaced(DEVELOPERS, rf"^\| `{last[0][1:-1]}` \| {last[1][:9]}.*\n", "", f"{part}/rooms.cmake has other rooms")
    replaced(DEVELOPERS, rf"^(\| `{before[0][1:-1]}` \| {before[1][:9]}.*\|).*\|$", r"\1 nothing |",
             f"{part}/\\w+ may include")
    replaced(f"{part}/rooms.cmake", r'^    "', '    "fresh:"\n    "', f"{part}/rooms.cmake has other rooms: fresh")
replaced(DEVELOPERS, r"column -> water -> pond", "pond -> water -> column", "has no arrow from pond to water")
replaced(DEVELOPERS, r"-> ensemble ->", "->", "the picture has no room ensemble")
replaced(DEVELOPERS, r"-> document -> engine$", "-> engine", "has no room document of widgets")

# Length.
expect("a long page", {DEVELOPERS: tree.text(DEVELOPERS) + "\n" * MOST_LINES + "end\n"}, f"at most {MOST_LINES} are read")
replaced_somewhere("engine/*/*.h", r"\A", "\n" * 400, r"^engine/\S+: it has \d+ lines, not at most 400")
replaced(DEVELOPERS, "A file has at most 400 lines", "A file is short", "does not say how many lines a file may have")
added(DEVELOPERS, "a" * (MOST_COLUMNS + 1), f"it has {MOST_COLUMNS + 1} characters")

print("\n".join(failures) or "Each fault is noticed.")
sys.exit(1 if failures else 0)
