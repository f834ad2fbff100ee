#!/usr/bin/env python3
"""Draws mutants of the rooms in which the pattern is made, and says which no test catches.

    tests/mutants/run.py [--count 150] [--seed 1] [--rooms draft,fit,pattern,toile] [--budget SECONDS] [--out FILE]

It works in a git worktree of its own under `target/mutants`, one mutant at a time: a comparison, a sum, a constant, a bound
or a statement changed. The tests run in stages, those that catch most for their time first, and a mutant is done with at
the first that fails. What compiles and passes all stages is listed as missed; one that changes nothing that can be seen
counts as missed too. `--no-snapshots` leaves out what only remembers yesterday.
"""

import argparse
import os
import pathlib
import random
import re
import subprocess
import time

STAGES = [
    ["--test", "snapshots"],
    ["--lib"],
    ["--test", "published", "--test", "parameters", "--test", "lengths", "--test", "drawn_line", "--test", "toile"],
    ["--test", "properties", "--test", "trust", "--test", "measured_fit", "--test", "cut_pieces", "--test", "two_legs"],
    ["--test", "measured_limits", "--test", "limits", "--test", "surveys", "--test", "exchange", "--test", "commands"],
    ["--test", "hand"],
]
SWAPS = [
    (r" < ", " > "), (r" > ", " < "), (r" <= ", " > "), (r" >= ", " < "), (r" == ", " != "), (r" != ", " == "),
    (r" \+ ", " - "), (r" - ", " + "), (r" \* ", " / "), (r" / ", " * "), (r" \+= ", " -= "), (r" -= ", " += "),
    (r"\.min\(", ".max("), (r"\.max\(", ".min("), (r" && ", " || "), (r" \|\| ", " && "),
    (r"\btrue\b", "false"), (r"\bfalse\b", "true"), (r"\(-(?=[a-z(])", "("),
]
NUMBER = re.compile(r"(?<![\w.\"])(\d+\.\d+)(?![\w.\"])")
STATEMENT = re.compile(r"^\s+[a-z_][\w.]*(\.\w+|!)?\(.*\);$")
NOT_CODE = re.compile(r"^\s*(//|#\[|use |pub use |impl|where|mod )|\bdyn\b|\bfn\b|\bassert|\bexpect\(|\bunreachable!|write!|writeln!")


def places(root, rooms):
    """Every change that could be made, as (file, line, what, new text of the line)."""
    found = []
    for room in rooms:
        files = sorted([root / "src" / f"{room}.rs", *(root / "src" / room).rglob("*.rs")])
        for file in files:
            for number, line in enumerate(file.read_text().split("\n")):
                if line.startswith("#[cfg(test)]"):
                    break
                if NOT_CODE.search(line):
                    continue
                code = line.split(" // ")[0]
                if '"' in code:
                    continue
                for pattern, new in SWAPS:
                    for hit in re.finditer(pattern, code):
                        text = code[: hit.start()] + new + code[hit.end():]
                        found.append((file, number, f"{hit.group().strip()} -> {new.strip()}", text))
                for hit in NUMBER.finditer(code):
                    old = float(hit.group())
                    new = repr(round(old * 1.3, 6)) if old else "0.5"
                    found.append((file, number, f"{hit.group()} -> {new}", code[: hit.start()] + new + code[hit.end():]))
                if STATEMENT.match(code):
                    found.append((file, number, "statement taken out", ""))
    return found


def cargo(tree, arguments, seconds):
    """`passed`, `failed` or `does not compile`; a mutant that hangs has failed."""
    environment = dict(os.environ, CARGO_TARGET_DIR=str(tree / "target"), INSTA_UPDATE="no", RUST_BACKTRACE="0")
    build = subprocess.run(["cargo", "test", "-q", "--no-run", *arguments], cwd=tree, env=environment, capture_output=True)
    if build.returncode:
        return "does not compile"
    try:
        run = subprocess.run(["cargo", "test", "-q", *arguments], cwd=tree, env=environment, capture_output=True, timeout=seconds)
    except subprocess.TimeoutExpired:
        return "failed"
    return "failed" if run.returncode else "passed"


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--count", type=int, default=150)
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--rooms", default="draft,fit,pattern,toile")
    words.add_argument("--budget", type=float, default=float("inf"), help="seconds after which no further mutant is begun")
    words.add_argument("--out", type=pathlib.Path)
    words.add_argument("--no-snapshots", action="store_true")
    chosen = words.parse_args()
    home = pathlib.Path(__file__).resolve().parents[2]
    tree = home / "target" / "mutants"
    if not tree.exists():
        subprocess.run(["git", "worktree", "add", "--detach", str(tree), "HEAD"], cwd=home, check=True)
    subprocess.run(["git", "checkout", "-q", "--detach", subprocess.check_output(["git", "rev-parse", "HEAD"], cwd=home, text=True).strip()], cwd=tree, check=True)
    stages = STAGES[1:] if chosen.no_snapshots else STAGES
    began = time.time()
    for stage in stages:
        if cargo(tree, stage, 3600) != "passed":
            raise SystemExit(f"without a mutant, {' '.join(stage)} does not pass")
    drawn = places(tree, chosen.rooms.split(","))
    random.Random(chosen.seed).shuffle(drawn)
    lines, caught, missed = [], 0, []

    def say(line):
        lines.append(line)
        print(line, flush=True)
        if chosen.out:
            chosen.out.write_text("\n".join(lines) + "\n")

    for file, number, what, text in drawn:
        if caught + len(missed) >= chosen.count or time.time() - began > chosen.budget:
            break
        before = file.read_text()
        rows = before.split("\n")
        rows[number] = text
        file.write_text("\n".join(rows))
        place = f"{file.relative_to(tree)}:{number + 1}"
        try:
            by = None
            for stage in stages:
                answer = cargo(tree, stage, 900)
                if answer != "passed":
                    by = answer if answer == "does not compile" else " ".join(stage).replace("--test ", "")
                    break
        finally:
            file.write_text(before)
        if by == "does not compile":
            continue
        if by:
            caught += 1
            say(f"caught  {place}  {what}  by {by}")
        else:
            missed.append(place)
            say(f"MISSED  {place}  {what}")
    say(f"{caught} of {caught + len(missed)} caught")


if __name__ == "__main__":
    main()
