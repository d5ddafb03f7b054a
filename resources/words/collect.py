"""Collects what the reader can see and lupdate cannot find by itself: texts that reach a translator through a function
of their file or of a header (`say`, `onPaper`), core's phrases, texts in tables, and what the piece forms call their
parts and measures. Writes them as one C++ file for lupdate to read.

usage: collect.py SOURCE_DIR OUT.cpp
"""
import json, pathlib, re, sys

LITERAL = r'"(?:[^"\\\n]|\\.)*"'
WRAPPER = re.compile(r'QString (\w+)\(const char \*\w+\)\s*\{\s*return QCoreApplication::translate\("(\w+)", \w+\);\s*\}')
# Words that core puts together by itself: units of lengths, sides of a panel.
LOOSE = ["in", "ft", "yd", "mm", "cm", "m", "top", "bottom", "left", "right"]


def without_comments(text):
    return re.sub(rf'({LITERAL})|//[^\n]*|/\*.*?\*/', lambda m: m.group(1) or " ", text, flags=re.S)


def first_argument(text, at):
    """The source from an opening parenthesis to the comma or parenthesis that ends its first argument."""
    depth, start = 1, at
    while at < len(text) and depth:
        if text[at] == '"':
            at = re.compile(LITERAL).match(text, at).end()
            continue
        if text[at] in "([{": depth += 1
        if text[at] in ")]}": depth -= 1
        if text[at] == "," and depth == 1: break
        at += 1
    return text[start:at].rstrip(")")


def texts(argument):
    """Each run of neighbouring literals is one text."""
    return ["".join(re.findall(r'"((?:[^"\\\n]|\\.)*)"', run)) for run in re.findall(rf"(?:{LITERAL}\s*)+", argument)]


def collected(source):
    out = {("Core", word) for word in LOOSE}
    # A function of a header serves every file.
    shared = {"phrase": "Core", "marked": "Core"}
    for header in sorted((source / "ui").rglob("*.h")): shared.update(WRAPPER.findall(header.read_text(encoding="utf-8")))
    for folder in ("core", "ui", "app"):
        for file in sorted((source / folder).rglob("*.cpp")):
            code = without_comments(file.read_text(encoding="utf-8"))
            calls = shared | dict(WRAPPER.findall(code))
            for name, context in calls.items():
                for call in re.finditer(rf'(?<![\w.:>]){name}\(', code):
                    for text in texts(first_argument(code, call.end())):
                        if text: out.add((context, text))
            for menu in re.findall(rf'\{{\s*ActionId::\w+,\s*"(\w+)"', code): out.add(("Actions", menu))
    for file in (source / "core/forms/pieces").glob("*.json"):
        form = json.loads(file.read_text(encoding="utf-8"))
        out.add(("Core", form["name"]))
        for part in form["parts"]:
            out.update(("Core", words) for words in (part["name"], *(measure[1] for measure in part["measures"])))
    return sorted(out)


def main(source, out):
    lines = [f'QT_TRANSLATE_NOOP("{context}", "{text}");' for context, text in collected(pathlib.Path(source))]
    pathlib.Path(out).write_text("// Made by collect.py for lupdate; never compiled.\n" + "\n".join(lines) + "\n", encoding="utf-8")
    print(f"{len(lines)} texts beside those in tr()")


if __name__ == "__main__":
    main(*sys.argv[1:])
