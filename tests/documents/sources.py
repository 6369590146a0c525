"""What the sources have, for check.py: paths, words, options, labels and constants; and the parts of a page."""

import fnmatch
import functools
import itertools
import pathlib
import re

SCRIPTS = ("app/run", "tests/run")
SOURCES = ("engine/", "widgets/", "app/", "tests/", "resources/")
FOLDERS = ("engine", "widgets", "app", "tests", "resources", "scenarios")
NUMBER_WORDS = {"seven": 7.0}

# C++ and what of it is a comment; strings are matched so that a comment's marks in them are none.
CPP = re.compile(r'"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])\'|//[^\n]*|/\*.*?\*/', re.S)
PATH_IN_COMMENT = re.compile(r"(?<![\w/.*-])(?:%s)/[\w./*{},-]*\w\}?" % "|".join(FOLDERS))


class Tree:
    """The files of a folder; `changed` has other texts for some of them."""

    def __init__(self, root, changed=None):
        self.root = pathlib.Path(root).resolve()
        self.changed = changed or {}

    def text(self, path):
        return self.changed[path] if path in self.changed else read(self.root / path)

    def files(self, pattern):
        return [path for path in paths_in(self.root) if matches(path, pattern) and (self.root / path).is_file()]

    @functools.cached_property
    def code(self):
        """Texts of all sources without their comments, by path; these scripts are none of them."""
        paths = [path for path in paths_in(self.root) if path.startswith(SOURCES)
                 and re.search(r"(\.(h|cpp|cmake|py|txt)|/[a-z_]+)$", path) and not path.startswith("tests/documents/")]
        return {path: without_comments(path, self.text(path)) for path in ["CMakeLists.txt", *paths]}

    @functools.cached_property
    def words(self):
        return {path: words_of(text) for path, text in self.code.items()}

    def has_word(self, *names):
        """True if one source has all these words."""
        return any(words.issuperset(names) for words in self.words.values())

    def has_text(self, text):
        return any(text in code for code in self.code.values())


@functools.cache
def paths_in(root):
    """All files and folders of ours, from the root."""
    return sorted(str(path.relative_to(root)) for top in root.iterdir() if not re.match(r"build|\.git$", top.name)
                  for path in [top, *top.rglob("*")] if "__pycache__" not in path.parts)


@functools.cache
def matches(path, pattern):
    """Part by part, so that a star stands for no slash."""
    parts, patterns = path.split("/"), pattern.split("/")
    return len(parts) == len(patterns) and all(map(fnmatch.fnmatchcase, parts, patterns))


@functools.cache
def read(path):
    return path.read_text(encoding="utf-8", errors="replace") if path.is_file() else ""


@functools.cache
def without_comments(path, text):
    if path.endswith((".h", ".cpp")):
        return CPP.sub(lambda found: "" if found[0].startswith("/") else found[0], text)
    return re.sub(r"(?m)(^|\s)#\s.*$", "", text)


@functools.cache
def words_of(text):
    return frozenset(re.findall(r"\w+", text))


@functools.cache
def paths_in_comments(text):
    return [(text.count("\n", 0, found.start()) + 1, path) for found in CPP.finditer(text)
            if found[0].startswith("/") for path in PATH_IN_COMMENT.findall(found[0])]


def expanded(pattern):
    """`a.{h,cpp}` as a.h and a.cpp; capitals that stand for a name as `*`."""
    pattern = re.sub(r"(?<![A-Za-z_.])[A-Z]{2,}(?![A-Za-z.])", "*", pattern)
    parts = [part[1:-1].split(",") if part.startswith("{") else [part]
             for part in re.split(r"(\{[^}]*\})", pattern)]
    return ["".join(one) for one in itertools.product(*parts)]


def exists(tree, pattern):
    return all(any_matches(tree.root, one.rstrip("/")) for one in expanded(pattern))


@functools.cache
def any_matches(root, pattern):
    """A pattern without a slash may be met in any folder."""
    paths = paths_in(root)
    return pattern in paths or any(
        matches(path if "/" in pattern else path.rpartition("/")[2], pattern) for path in paths if "*" in pattern)


def blocks(text):
    """(line, language or None, text) of each block of code and of each line outside of them."""
    language, start, inside = None, 0, []
    for number, line in enumerate(text.split("\n"), 1):
        if line.startswith("```"):
            if language is None:
                language, start, inside = line[3:].strip() or "text", number + 1, []
            else:
                yield start, language, "\n".join(inside)
                language = None
        elif language is None:
            yield number, None, line
        else:
            inside.append(line)


def table(text, first):
    """Rows of the table whose head begins with `first`: (line, cells)."""
    rows, inside = [], False
    for number, line in enumerate(text.split("\n"), 1):
        if line.startswith("| " + first + " |"):
            inside = True
        elif inside and not line.startswith("|"):
            break
        elif inside and not line.startswith("|---"):
            rows.append((number, [cell.strip() for cell in line.strip("|").split("|")]))
    return rows


def options_of(tree):
    """What each script and program takes."""
    taken = {script: set(re.findall(r"(?m)^\s*(--[a-z-]+)\)", tree.text(script))) for script in SCRIPTS}
    command_line = "".join(tree.code[path] for path in tree.code if fnmatch.fnmatch(path, "app/cli_*"))
    taken["dawnline-cli"] = set(re.findall(r'"(--[a-z-]+)"', command_line))
    window = re.findall(r"QCommandLineOption \w+[({](.*?)[)}];", tree.text("app/window_options.cpp"), re.S)
    taken["dawnline"] = {"--" + name for one in window for name in re.findall(r'"([a-z][a-z-]+)"', one)}
    taken["tests/same_output"] = set(re.findall(r'"(--[a-z-]+)"', tree.text("tests/same_output")))
    return taken


def commands_of(tree):
    listed = re.search(r"kCommands\{(.*?)\}", "".join(
        tree.code[path] for path in tree.code if fnmatch.fnmatch(path, "app/cli_*")), re.S)
    return set(re.findall(r'"(\w+)"', listed[1])) if listed else set()


def labels_of(tree):
    """The labels that tests/CMakeLists.txt gives."""
    text = without_comments("CMakeLists.txt", tree.text("tests/CMakeLists.txt"))
    found = re.findall(r"add_test_label\((\w+)", text) + re.findall(r"\bLABELS (\w+)", text)
    return set(found + re.findall(r"add_runs\([^\s()]+ (\w+)", text))


@functools.cache
def values_in(code, name):
    """The same of one source, as they are written."""
    struct, _, member = name.rpartition("::")
    if struct:
        places = re.findall(r"(?ms)^struct %s \{(.*?)^\};" % struct, code)
    else:
        places = re.findall(r"constexpr[^;]*;", code) if member in code else []
    return [value for place in places for value in re.findall(r"\b%s = ([\w.']+)" % member, place)]


def values_of(tree, name):
    """All values that the sources give a constant, or a member of a struct (`Struct::member`)."""
    values = {value for path, code in tree.code.items() if path.startswith(SOURCES[:3]) and path.endswith((".h", ".cpp"))
              for value in values_in(code, name)}
    return {value for one in values for value in (values_of(tree, one) if one.startswith("k") else {number(one)})}


def number(text):
    """What a number or a word for one means; not a number for anything else, which equals nothing."""
    try:
        return NUMBER_WORDS[text] if text in NUMBER_WORDS else float(re.sub("[,']", "", text))
    except ValueError:
        return float("nan")
