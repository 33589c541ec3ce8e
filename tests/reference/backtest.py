"""Back-test: plans made on one half of a real record, grown again, unchanged, in the other half.

`halves.py` tells which dishes, places and halves. `tureen` plans; an ingredient that cannot be
grown, as the program says itself, is left out. An ignored Rust test grows the plans in the years
not seen. What a plan promises is what the program prints first: counted in turn within its own half. Prints
the tables of the README beside it; fails if the ranges that the program prints are not SciPy's, or are kept
less often than they say, or if more is promised than reached.
"""

import csv
import datetime
import json
import os
import re
import shutil
import subprocess
from concurrent.futures import ThreadPoolExecutor
from statistics import mean, median, stdev
from typing import NamedTuple

from scipy.stats import binom, binomtest, chi2_contingency

from halves import DISHES, OUT, ROOT, SCRATCH, STATIONS, Run, prepare, record, without
from stations import latitude

WHOLE = "whole dish"
# What comes every year whatever the weather.
PATCHES = ["chives"]


# Plans may take so many seconds, with those that count what they promise; so many of them may not be done then.
TIME = "60"
MOST_NOT_IN_TIME = 8
# What whole dishes are promised and what they reach may lie so many years in a hundred apart, on average.
MOST_APART = 3


def plan(run: Run) -> str | None:
    """Plans, and leaves out what the program says cannot be grown; gives the printed text, or
    nothing where no plan was found in time, or what it promises was not counted."""
    command = [os.environ["TUREEN"], "plan", "seen.toml", "--all", "--out", ".", "--time-limit", TIME]
    while True:
        done = subprocess.run(command, cwd=run.folder, capture_output=True, text=True)
        if done.returncode == 0 and promised(run):
            return done.stdout
        if done.returncode in (0, 5):
            shutil.rmtree(run.folder)
            return None
        assert done.returncode == 4, f"{run}: {done.stderr}"
        head = done.stdout.split("WHAT CANNOT BE IN THE POT\n")[1].split("\n\n")[0]
        for crop in re.findall(r"(?m)^  - ([^:]+): ", head):
            for name in ["seen.toml", "unseen.toml"]:
                path = run.folder / name
                path.write_text(without(path.read_text(), crop))


def promised(run: Run) -> dict[str, int]:
    """In how many years each ingredient and the whole dish are promised, as the saved plan tells; empty where
    it does not."""
    unseen = json.loads((run.folder / "plan.json").read_text())["plan"].get("unseen")
    if unseen is None:
        return {}
    each = {own["ingredient"]: own["ready-years"] for own in unseen["ingredients"]}
    return {**each, WHOLE: unseen["whole-dish-years"]}


class Pair(NamedTuple):
    """One ingredient, or the whole dish, of one plan: what was promised and what came."""

    run: Run
    name: str
    hits: int
    low: int
    high: int
    seen: str
    unseen: str

    def promised(self) -> float:
        """Share of ready years that is promised."""
        return self.hits / len(self.seen)

    def own(self) -> float:
        """Share of ready years among those that the plan was made for."""
        return self.seen.count("r") / len(self.seen)

    def reached(self) -> float:
        """Share of ready years among those that it had not seen."""
        return self.unseen.count("r") / len(self.unseen)

    def kept(self) -> bool:
        """True if the share that came lies within the printed range."""
        return self.low <= self.reached() * len(self.seen) <= self.high


def grow(runs: list[Run]) -> None:
    """Has all plans grown again; `grown.csv` holds one letter a year, `r` where it is ready."""
    test = "backtest::plans_are_grown_in_years_they_have_not_seen"
    command = ["cargo", "test", "--quiet", "--locked", "--", "--ignored", "--exact", test]
    environment = os.environ | {"TUREEN_EXPORT": str(OUT)}
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    assert all((run.folder / "grown.csv").exists() for run in runs)


def pairs(run: Run, text: str) -> list[Pair]:
    """What came of a plan, with the ranges that its printed text gives."""
    text = " ".join(text.split())
    hits = promised(run)
    found = []
    with open(run.folder / "grown.csv", newline="") as file:
        for row in csv.DictReader(file):
            name = row["ingredient"]
            said = rf"\b{re.escape(name)} in (\d+) to (\d+)[,.]"
            if name == WHOLE:
                said = (rf"The whole dish is ready in {hits[name]} of {len(row['seen'])} past years that plans made "
                        r"the same way had not seen, so expect it in (\d+) to (\d+) of the next \d+")
            low, high = map(int, re.search(said, text).groups())
            found.append(Pair(run, name, hits[name], low, high, row["seen"], row["unseen"]))
    return [pair for pair in found if pair.name not in PATCHES]


def by_scipy(pair: Pair) -> tuple[int, int]:
    """The range by SciPy: all numbers that the chi-square test does not tell from those seen."""
    hits, years = pair.hits, len(pair.seen)

    def alike(more: int) -> bool:
        if hits + more in (0, 2 * years):
            return True
        table = [[hits, years - hits], [more, years - more]]
        return chi2_contingency(table, correction=False).pvalue >= 0.05

    within = [more for more in range(years + 1) if alike(more)]
    return within[0], within[-1]


def by_wilson(pair: Pair) -> bool:
    """True if Wilson's 95 % interval, which is for endless years, would have been kept."""
    test = binomtest(pair.hits, len(pair.seen))
    low, high = test.proportion_ci(0.95, "wilson")
    return bool(low <= pair.reached() <= high)


def row(name: str, pairs: list[Pair]) -> str:
    """A row of the table: of halves in time, and of every second year."""
    cells = []
    for ways in [("early",), ("late",), ("even", "odd")]:
        some = [pair for pair in pairs if pair.run.seen in ways]
        if some:
            promised, reached = (100 * mean(map(f, some)) for f in (Pair.promised, Pair.reached))
            kept = sum(map(Pair.kept, some))
            cells.append(f"{kept} of {len(some)} | {promised:.0f} to {reached:.0f}")
        else:
            cells.append("- | -")
    return f"| {name} | " + " | ".join(cells) + " |"


def climate(station: str) -> str:
    """Mean temperature and median last frost of the half-years of the two halves of a record."""
    days = record(SCRATCH / "stations" / f"{station}.csv")
    middle = datetime.date((days[0].date.year + days[-1].date.year + 1) // 2, 1, 1)
    cells = [f"{days[0].date.year} to {days[-1].date.year}"]
    halves = [[d for d in days if d.date < middle], [d for d in days if d.date >= middle]]
    cells += [f"{mean((d.tmin + d.tmax) / 2 for d in half):.1f}" for half in halves]
    warming = range(7, 13) if latitude(station) < 0 else range(1, 7)
    for half in halves:
        last: dict[int, int] = {}
        for d in half:
            if d.date.month in warming and d.tmin <= 0:
                last[d.date.year] = d.date.timetuple().tm_yday
        if len(last) > len({d.date.year for d in half}) / 2:
            middle_day = datetime.timedelta(days=int(median(last.values())) - 1)
            day = datetime.date(2001, 1, 1) + middle_day
            cells.append(f"{day.day} {day:%B}")
        else:
            cells.append("none in most years")
    return f"| {station} | " + " | ".join(cells) + " |"


def report(all_pairs: list[Pair]) -> None:
    """Prints the tables that stand in the README beside it."""
    dishes = [pair for pair in all_pairs if pair.name == WHOLE]
    ingredients = [pair for pair in all_pairs if pair.name != WHOLE]
    print("| | early: kept | promised to reached | late: kept | promised to reached "
          "| every second year: kept | promised to reached |")
    print("| --- " + "| ---: " * 6 + "|")
    print(row("**whole dishes**", dishes))
    for station in STATIONS:
        print(row(station, [pair for pair in dishes if pair.run.station == station]))
    print(row("**ingredients**", ingredients))
    for station in STATIONS:
        print(row(station, [pair for pair in ingredients if pair.run.station == station]))
    for crop in sorted({pair.name for pair in ingredients}):
        print(row(crop, [pair for pair in ingredients if pair.name == crop]))
    print("\n| station | record | early, mean C | late, mean C | last frost, early | late |")
    print("| --- | --- | ---: | ---: | --- | --- |")
    for station in STATIONS:
        print(climate(station))
    print("\nOutside the range:")
    for pair in all_pairs:
        if not pair.kept():
            print(f"- {pair.run.folder.name}, {pair.name}: {pair.low} to {pair.high} of {len(pair.seen)}; "
                  f"seen {pair.seen}, unseen {pair.unseen}")


def judge(all_pairs: list[Pair]) -> None:
    """Fails where the printed ranges are not SciPy's, or are kept less often than they may be.

    The ranges say 95 %. What grows at one place in one year goes together, and each half is used
    twice, so one dish at one station counts as one draw, not each pair: as few as the binomial
    distribution gives once in a hundred times may be kept.
    """
    differ = [pair for pair in all_pairs if by_scipy(pair) != (pair.low, pair.high)]
    assert not differ, f"not as SciPy: {differ[0]}, {by_scipy(differ[0])}"
    print(f"\n{len(all_pairs)} printed ranges are those of SciPy.")
    draws = len({(pair.run.station, pair.run.dish) for pair in all_pairs})
    least = binom.ppf(0.01, draws, 0.95) / draws
    failed = False
    for ways in [("early", "late"), ("even", "odd")]:
        for whole in [True, False]:
            some = [p for p in all_pairs if p.run.seen in ways and (p.name == WHOLE) == whole]
            share = mean(map(Pair.kept, some))
            failed |= share < least
            missed = [p for p in some if not p.kept()]
            low = sum(p.reached() < p.promised() for p in missed)
            what = "whole dishes" if whole else "ingredients"
            print(
                f"{' and '.join(ways)}, {what}: {share:.1%} of {len(some)} within, "
                f"at least {least:.1%} wanted; {low} of {len(missed)} misses below; promised {mean(map(Pair.promised, some)):.1%}, "
                f"own years {mean(map(Pair.own, some)):.1%}, reached {mean(map(Pair.reached, some)):.1%}; "
                f"Wilson {mean(map(by_wilson, some)):.1%}"
            )
    dishes = [p for p in all_pairs if p.name == WHOLE]
    too_much = [100 * (p.promised() - p.reached()) for p in dishes]
    rosy = 100 * mean(p.own() - p.reached() for p in dishes)
    error = stdev(too_much) / len(too_much) ** 0.5
    print(f"Whole dishes: promised less reached {mean(too_much):.1f} years in a hundred (standard error {error:.1f}); "
          f"own years less reached {rosy:.1f}.")
    if not 5 <= round(rosy) <= 10:
        print("words::promise says five to ten years in a hundred of a plan's own years")
        failed = True
    if abs(mean(too_much)) > MOST_APART:
        print(f"more than {MOST_APART} years in a hundred apart")
        failed = True
    assert not failed, "the program says more than holds"


def main() -> None:
    shutil.rmtree(OUT, ignore_errors=True)
    runs = [run for station in STATIONS for dish in DISHES[station] for run in prepare(station, dish)]
    with ThreadPoolExecutor(2) as pool:
        texts = list(pool.map(plan, runs))
    planned = [(run, text) for run, text in zip(runs, texts) if text is not None]
    missing = [run.folder.name for run, text in zip(runs, texts) if text is None]
    print(f"No plan in {TIME} s: {len(missing)} of {len(runs)}: {', '.join(missing) or 'none'}.")
    assert len(missing) <= MOST_NOT_IN_TIME
    grow([run for run, _ in planned])
    all_pairs = [pair for run, text in planned for pair in pairs(run, text)]
    report(all_pairs)
    judge(all_pairs)


if __name__ == "__main__":
    main()
