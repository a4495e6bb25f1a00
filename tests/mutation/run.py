#!/usr/bin/env python3
"""Flips every comparison and number of src/calc and src/rules, one at a time, and sees whether the tests notice.

Usage: tests/mutation/run.py [--sample COUNT --seed SEED] [--only FILE…] [--survivors] [--jobs JOBS]

A copy of the source with all mutants is built once in build/mutation; a test program chooses which one is alive. The
table of results is printed and left in build/mutation/report.md. Ends with 1 if fewer than 95 % are noticed of those that
survivors.md does not list as equivalent.
"""

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
from collections import Counter
from pathlib import Path

from plant import Mutant, Planter

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parent.parent
PLACE = PROJECT / "build" / "mutation"
COPY = PLACE / "copy"
BUILD = PLACE / "build"
NOT_COPIED = {".git", "build", "samples"}
# The quickest first: what one program notices the next is not asked about.
PROGRAMS = {"test_calc": "calc", "test_calculators": "rules/calculators", "test_rules": "rules"}
# Types of the tables that the build bakes: their numbers are constants of the compiler, not of a sum or a check.
TABLE_TYPES = {"src/rules/rule_book.hpp", "src/rules/calculators/calculator_book.hpp"}
# They take a minute or more, and look for holes in messages and for what is no number at all, not for a wrong number.
LEFT_OUT = "*is judged without a hole in a message,no calculator gives a number that is not one*"
THRESHOLDS = "src/rules/thresholds.yaml"
GOAL = 0.95
LEFT = ("survived", "unreached")
MOST_MUTANTS = 16384  # as in mutants.hpp
# How the mutants of main.cpp that are made by hand must end, or the run itself is at fault.
HAND_MADE = dict(enumerate(("failed", "survived", "crashed", "endless", "unreached"), MOST_MUTANTS - 5))
SURVIVORS = HERE / "survivors.md"
ENDS = PLACE / "ends.tsv"


def save(path: Path, text: bytes) -> None:
    """Leaves a file alone that is as it should be, so that it is not compiled again."""
    if path.exists() and path.read_bytes() == text:
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text)


def mutated_files() -> list[Path]:
    files = [*PROJECT.glob("src/calc/*.[ch]pp"), *PROJECT.glob("src/rules/*.[ch]pp"),
             *PROJECT.glob("src/rules/calculators/*.[ch]pp")]  # fmt: skip
    return sorted(files)


def copy_tree() -> None:
    kept = {COPY / "src/rules/thresholds.hpp"}
    mutated = set(mutated_files()) | {PROJECT / "tests/main.cpp"}
    for root in sorted(PROJECT.iterdir()):
        if root.name in NOT_COPIED:
            continue
        for path in [root] if root.is_file() else sorted(root.rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                kept.add(COPY / path.relative_to(PROJECT))
                if path not in mutated:
                    save(COPY / path.relative_to(PROJECT), path.read_bytes())
    for path in COPY.rglob("*"):
        if path.is_file() and path not in kept:
            path.unlink()
    save(COPY / "tests/main.cpp", (HERE / "main.cpp").read_bytes())


def plant_all() -> tuple[list[Mutant], list[str]]:
    mutants: list[Mutant] = []
    skipped: list[str] = []
    for path in mutated_files():
        name = str(path.relative_to(PROJECT))
        planted = Planter(name, path.read_text(), len(mutants) + 1, name in TABLE_TYPES).plant()
        save(COPY / name, planted.text.encode())
        mutants += planted.mutants
        skipped += planted.skipped
    return mutants, skipped


def plant_thresholds(first: int) -> list[Mutant]:
    """The thresholds are baked into a header; its mutants are told by their line of the data file."""
    subprocess.run(["cmake", "--build", str(BUILD), "--target", "ventfolio_bake_rules"], check=True)
    sheets = COPY / "src/rules/book/sheets.yaml"
    book = [path for path in sorted(sheets.parent.glob("*.yaml")) if path != sheets]
    baked = PLACE / "baked"
    baked.mkdir(exist_ok=True)
    subprocess.run([BUILD / "src/rules/ventfolio_bake_rules", baked, sheets, COPY / "src/rules/thresholds.yaml", *book],
                   check=True)  # fmt: skip
    text = (baked / "thresholds.hpp").read_text().replace(" / 100.0", " / kPercent")
    planted = Planter(THRESHOLDS, text, first).plant()
    percent = "#pragma once\n\nnamespace ventfolio::threshold {\nconstexpr double kPercent = 100;\n}\n"
    save(COPY / "src/rules/thresholds.hpp", planted.text.replace("#pragma once\n", percent, 1).encode())
    lines = (PROJECT / "src/rules/thresholds.yaml").read_text().split("\n")
    for mutant in planted.mutants:
        name = re.search(r"\bk(\w+) =", mutant.changed).group(1)
        key = "name: " + re.sub(r"(?<!^)([A-Z])", r"_\1", name).lower() + ","
        mutant.line = next(number for number, line in enumerate(lines, 1) if key in line)
        slip = re.search(r"\[.* became .*?\]", mutant.changed).group()
        mutant.changed = re.sub(r"(?<=value: )[\d.]+", slip, lines[mutant.line - 1].strip())
    return planted.mutants


def configure() -> None:
    launcher = ["-DCMAKE_CXX_COMPILER_LAUNCHER=ccache"] if shutil.which("ccache") else []
    # Lists and texts check their subscripts, so that a mutant that reads past an end is noticed every time.
    flags = f"-w -include {HERE / 'mutants.hpp'} -D_GLIBCXX_ASSERTIONS"
    subprocess.run(
        ["cmake", "-S", str(COPY), "-B", str(BUILD), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DBUILD_TESTING=ON",
         "-DCMAKE_CXX_FLAGS_RELEASE=-O1", f"-DCMAKE_CXX_FLAGS={flags}", *launcher],
        check=True, stdout=subprocess.DEVNULL)  # fmt: skip


def build(jobs: int) -> tuple[list[Mutant], list[str]]:
    copy_tree()
    mutants, skipped = plant_all()
    configure()
    mutants += plant_thresholds(len(mutants) + 1)
    subprocess.run(["cmake", "--build", str(BUILD), f"-j{jobs}", "--target", *PROGRAMS, "--", "-k", "0"], check=True)
    return mutants, skipped


def run(mutants: list[Mutant], jobs: int) -> dict[int, tuple[str, str]]:
    """How each mutant ended, and the test that noticed it."""
    ends: dict[int, tuple[str, str]] = {mutant.number: ("unreached", "") for mutant in mutants}
    progress = (PLACE / "progress.txt").open("w", buffering=1)
    for program, folder in PROGRAMS.items():
        left = [number for number, (end, _) in ends.items() if end in LEFT] + list(HAND_MADE)
        numbers = PLACE / "mutants.txt"
        numbers.write_text("\n".join(map(str, left)) + "\n")
        command = [str(BUILD / "tests" / folder / program), str(numbers), str(jobs), LEFT_OUT]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, preexec_fn=lambda: os.nice(10)) as process:
            for line in process.stdout:
                progress.write(f"{program}\t{line}")
                number, end, test = line.rstrip("\n").split("\t")
                if int(number) in HAND_MADE:
                    if end != HAND_MADE[int(number)]:
                        sys.exit(f"{program}: a mutant made by hand ended as {end}, not as {HAND_MADE[int(number)]}")
                elif end != "unreached":
                    ends[int(number)] = (end, f"{program}: {test}" if test else "")
        if process.returncode != 0:
            sys.exit(f"{program} fails without any mutant")
    return ends


def keep_ends(mutants: list[Mutant], ends: dict[int, tuple[str, str]]) -> None:
    """Mutants are known by file and changed line, and not by number, which another line above would change."""
    ENDS.write_text("".join("\t".join([one.file, one.changed, *ends[one.number]]) + "\n" for one in mutants))


def last_ends(mutants: list[Mutant]) -> dict[int, tuple[str, str]]:
    kept: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for row in ENDS.read_text().splitlines():
        file, changed, end, test = row.split("\t")
        kept.setdefault((file, changed), []).append((end, test))
    # The same line may stand in a file twice.
    return {one.number: kept[one.file, one.changed].pop(0) for one in mutants if kept.get((one.file, one.changed))}


def listed_as_equivalent() -> set[tuple[str, str]]:
    """File and changed line of each mutant that survivors.md lists below a heading "Equivalent"."""
    listed: set[tuple[str, str]] = set()
    equivalent = False
    for line in SURVIVORS.read_text().splitlines():
        if line.startswith("#"):
            equivalent = line.startswith("## Equivalent")
        elif row := re.fullmatch(r"- `(\S+)`: `(.+)`", line):
            if equivalent:
                listed.add((row.group(1), row.group(2)))
    return listed


def report(mutants: list[Mutant], skipped: list[str], ends: dict[int, tuple[str, str]]) -> tuple[str, float]:
    noticed = [one for one in mutants if ends[one.number][0] not in LEFT]
    listed = listed_as_equivalent()
    equivalent = [one for one in mutants if (one.file, one.changed) in listed and ends[one.number][0] in LEFT]
    share = len(noticed) / max(1, len(mutants) - len(equivalent))
    how = Counter(ends[one.number][0] for one in mutants)
    out = f"{len(mutants)} mutants, {len(noticed)} noticed: {100 * len(noticed) / len(mutants):.1f} %; "
    out += f"{100 * share:.1f} % without the {len(equivalent)} listed as equivalent\n"
    out += ", ".join(f"{count} {end}" for end, count in how.most_common()) + f"; {len(skipped)} numbers skipped\n"
    out += "\n| file | mutants | noticed | survived |\n|---|---:|---:|---:|\n"
    for file in sorted({one.file for one in mutants}):
        of_file = [one for one in mutants if one.file == file]
        of_noticed = sum(one.file == file for one in noticed)
        out += f"| `{file}` | {len(of_file)} | {of_noticed} | {len(of_file) - of_noticed} |\n"
    out += "\n| noticed by | mutants |\n|---|---:|\n"
    for test, count in Counter(ends[one.number][1] for one in noticed).most_common():
        out += f"| {test} | {count} |\n"
    wrong = [one for one in noticed if (one.file, one.changed) in listed]
    if wrong:
        out += "\nListed as equivalent, and noticed\n\n"
        out += "".join(f"- `{one.file}`: `{one.changed}`\n" for one in wrong)
    out += "\nSurvivors that are not listed as equivalent: number, line, and * where no test passes\n\n"
    for one in mutants:
        end = ends[one.number][0]
        if end in LEFT and one not in equivalent:
            out += f"- {one.number}:{one.line}{'*' if end == 'unreached' else ''} `{one.file}`: `{one.changed}`\n"
    return out, share


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--sample", type=int, help="so many mutants, chosen by the seed (default: all)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--only", nargs="+", metavar="FILE", help="mutants of these files alone, such as src/calc/age.cpp")
    parser.add_argument("--survivors", action="store_true", help="ask again only about those that the last run left")
    given = parser.parse_args()
    unknown = set(given.only or []) - {str(path.relative_to(PROJECT)) for path in mutated_files()} - {THRESHOLDS}
    if unknown:
        parser.error(f"no such file: {' '.join(sorted(unknown))}")
    everyone, skipped = build(given.jobs)
    mutants = everyone
    ends: dict[int, tuple[str, str]] = {}
    if given.survivors:
        ends = last_ends(everyone)
        mutants = [one for one in mutants if one.number in ends]
    if given.only:
        mutants = [one for one in mutants if one.file in given.only]
    if given.sample and given.sample < len(mutants):
        chosen = set(random.Random(given.seed).sample([one.number for one in mutants], given.sample))
        mutants = [one for one in mutants if one.number in chosen]
        print(f"sample of {given.sample}, seed {given.seed}")
    ends |= run([one for one in mutants if ends.get(one.number, ("unreached", ""))[0] in LEFT], given.jobs)
    keep_ends([one for one in everyone if one.number in ends], ends)
    text, share = report(mutants, skipped, ends)
    (PLACE / "report.md").write_text(text)
    print(text)
    sys.exit(share < GOAL)


if __name__ == "__main__":
    main()
