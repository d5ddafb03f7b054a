"""Every text on every page goes through a translator, and numbers and dates through the locale: pages made with a
translator that turns each letter into an x, in a German locale, hold no other letters than the job's own, and no decimal
point.

usage: pages_in_another_tongue.py PAPER_PAGES
"""
import pathlib, re, subprocess, sys, tempfile
from job_on_cloth import Job
import poppler


def strings(value):
    if isinstance(value, dict): return [s for v in value.values() for s in strings(v)]
    if isinstance(value, list): return [s for v in value for s in strings(v)]
    return [value] if isinstance(value, str) else []


def foreign_words(pdf, job):
    """How many words stand in the file, and those that are neither translated (to x's) nor the job's own."""
    # A word of the job may be broken or stand beside marks: its letters are what counts.
    own = " ".join(strings(job.data)).casefold()
    seen, foreign = 0, []
    for _, _, rows in poppler.words(pdf):
        for text, *_ in rows:
            for word in "".join(c if c.isalpha() else " " for c in text).split():
                seen += 1
                # "A3" and the like are the names of pages joined at true size.
                if set(word.casefold()) <= {"x"} or word.casefold() in own or re.fullmatch(r"([A-Z]\d+\|?)+", text): continue
                if pdf.stem.endswith("panel") and re.fullmatch(r"[A-Z]\d*", text): continue
                foreign.append(f"{pdf.name}: {text!r}")
            # 12.5 would be an English number; a date such as 25.11.2026 is a German one.
            if re.fullmatch(r"\d+\.\d{1,2}", text): foreign.append(f"{pdf.name}: {text!r} has a decimal point")
    return seen, foreign


def main(program):
    poppler.need("pdftotext")
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "foreign", "3"], check=True)
        foreign, seen = [], 0
        for pdf in sorted(folder.glob("*.pdf")):
            words, wrong = foreign_words(pdf, Job(folder / f"{pdf.stem.rsplit('-', 1)[0]}.boltwright"))
            seen += words
            foreign += wrong
        assert seen > 1000
        if foreign: sys.exit("\n".join(sorted(set(foreign))))
        print(f"{seen} words, each of the job itself or translated")


if __name__ == "__main__":
    main(*sys.argv[1:])
