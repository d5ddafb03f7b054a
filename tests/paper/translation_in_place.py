"""A translation put in place is what comes on paper: everything is collected for translators as the `words` target does
it, each text is translated into x's by Qt's own tools, and the program, started in a German locale, prints no other
letters than the job's own. Dates and numbers are written as that locale writes them.

usage: translation_in_place.py PAPER_PAGES BOLTWRIGHT COLLECT LUPDATE LRELEASE
"""
import os, pathlib, re, subprocess, sys, tempfile
import xml.etree.ElementTree as ET
from job_on_cloth import Job
from pages_in_another_tongue import foreign_words, strings
import poppler

PART = re.compile(r"%\d|%n|&\w+;")


def in_xs(text):
    return "".join(part if PART.fullmatch(part) else "".join("x" if c.isalpha() else c for c in part)
                   for part in re.split(r"(%\d|%n)", text))


def translate(ts):
    """Every message of the file, all its plural forms."""
    tree = ET.parse(ts)
    count = {}
    tree.getroot().set("language", "de_DE")
    for context in tree.getroot().iter("context"):
        for message in context.iter("message"):
            source, translation = message.find("source").text, message.find("translation")
            translation.attrib.pop("type", None)
            for old in list(translation): translation.remove(old)
            if message.get("numerus") == "yes":
                translation.text = None
                for _ in range(2): ET.SubElement(translation, "numerusform").text = in_xs(source)
            else: translation.text = in_xs(source)
            count[context.find("name").text] = count.get(context.find("name").text, 0) + 1
    tree.write(ts, encoding="utf-8", xml_declaration=True)
    return count


def check_reasons(pages, folder, env):
    """What comes on screen from core: reasons of the rules, faults that check finds, doubts and names of the piece forms."""
    (folder / "reasons").mkdir()
    out = subprocess.run([pages, folder / "reasons", "reasons", "12"], check=True, env=env, capture_output=True, text=True).stdout
    own = {w.casefold() for file in (folder / "reasons").glob("*.boltwright") for s in strings(Job(file).data) for w in letters(s)}
    rows = [line.split("\t", 1) for line in out.splitlines()]
    for kind, least in (("rules", 100), ("check", 100), ("doubts", 60), ("names", 100)):
        told = [text for k, text in rows if k == kind]
        assert len(told) >= least, (kind, len(told))
        words = [w for text in told for w in letters(text)]
        if kind in ("doubts", "names"): wrong = {text for text in told if set("".join(letters(text)).casefold()) - set("x")}
        else: wrong = {text for text in told if any(set(w.casefold()) - {"x"} and w.casefold() not in own for w in letters(text))}
        # Panels of a job have the job's own names; those of a form are the reader's.
        assert not wrong, f"{kind} not translated: {sorted(wrong)[:5]}"
        assert sum(set(w.casefold()) == {"x"} for w in words) * 2 > len(words), f"{kind}: little is translated"
        assert not any(re.search(r"\d\.\d", text) for text in told), f"{kind}: a decimal point"
        print(f"{kind}: {len(told)} texts, {len(set(told))} different")


def letters(text): return "".join(c if c.isalpha() else " " for c in text).split()


def main(pages, program, collect, lupdate, lrelease):
    poppler.need("pdftotext")
    for tool in (lupdate, lrelease):
        if not pathlib.Path(tool).is_file():
            print(f"skipped: {tool} is missing (qt6-l10n-tools)")
            sys.exit(77)
    source = pathlib.Path(collect).parents[2]
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([sys.executable, collect, source, folder / "collected.cpp"], check=True)
        subprocess.run([lupdate, "-silent", "-locations", "none", "-I", source, source / "ui", source / "app",
                        folder / "collected.cpp", "-ts", folder / "boltwright_de.ts"], check=True, stderr=subprocess.DEVNULL)
        count = translate(folder / "boltwright_de.ts")
        assert count["Paper"] > 80 and count["Core"] > 100 and count["Actions"] > 100, count
        subprocess.run([lrelease, "-silent", folder / "boltwright_de.ts", "-qm", folder / "boltwright_de.qm"], check=True)
        (folder / "jobs").mkdir()
        subprocess.run([pages, folder / "jobs", "list", "2"], check=True)
        env = dict(os.environ, BOLTWRIGHT_WORDS=str(folder), LC_ALL="de_DE.UTF-8", LANGUAGE="", QT_QPA_PLATFORM="offscreen")
        foreign, seen, dates = [], 0, 0
        for file in sorted((folder / "jobs").glob("*.boltwright")):
            job = Job(file)
            for command in ("sheet", "client"):
                pdf = file.with_suffix(f".{command}.pdf")
                extra = ["--seconds", "0"] if command == "client" else []
                subprocess.run([program, command, file, "--out", pdf, *extra], check=True, env=env, capture_output=True)
                words, wrong = foreign_words(pdf, job)
                seen += words
                foreign += wrong
                text = " ".join(t for _, _, rows in poppler.words(pdf) for t, *_ in rows)
                date = job.data.get("job", {}).get("date", "")
                if re.fullmatch(r"\d{4}-\d\d-\d\d", date):
                    y, m, d = date.split("-")
                    assert f"{d}.{m}.{y[2:]}" in text, f"{pdf.name}: {date} is not written as in Germany"
                    dates += 1
        assert seen > 1000 and dates > 2, (seen, dates)
        if foreign: sys.exit("\n".join(sorted(set(foreign))))
        check_reasons(pages, folder, env)
        # The same file, asked for in English: the words and the date are English.
        sample = sorted((folder / "jobs").glob("sample-*.boltwright"))[0]
        env["LC_ALL"] = "en_US.UTF-8"
        subprocess.run([program, "sheet", sample, "--out", folder / "english.pdf"], check=True, env=env, capture_output=True)
        text = " ".join(t for _, _, rows in poppler.words(folder / "english.pdf") for t, *_ in rows)
        assert "Chalk list, in cutting order" in text, text[:400]
        y, m, d = Job(sample).data["job"]["date"].split("-")
        assert f"{int(m)}/{int(d)}/{y[2:]}" in text, "the date is not written as in the United States"
        print(f"{sum(count.values())} texts collected; {seen} words on paper, each translated or the job's own; {dates} dates")


if __name__ == "__main__":
    main(*sys.argv[1:])
