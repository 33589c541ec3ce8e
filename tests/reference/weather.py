"""Real daily records through tureen: frost dates, degree-days, soil, leap years, and what it says
of days that are missing. Everything is computed a second time here, with numpy, from the files.
"""

import csv
import datetime
import os
import pathlib
import re
import subprocess
import sys
import tempfile

import numpy as np

import stations

# Spans, each from a Monday to a Friday; the program adds the weekend. Both hold 29 February.
NORTH = (datetime.date(2027, 1, 11), datetime.date(2027, 10, 8))
SOUTH = (datetime.date(2026, 10, 5), datetime.date(2027, 4, 9))
SUM_TOLERANCE = 0.01  # C-days in a season of some 2000
SOIL_TOLERANCE = 1e-6

Record = dict[datetime.date, tuple[float, float]]


def read(path: pathlib.Path) -> Record:
    """Extremes by day."""
    with open(path, newline="") as file:
        rows = csv.DictReader(file)
        return {
            datetime.date.fromisoformat(r["date"]): (float(r["tmin_c"]), float(r["tmax_c"]))
            for r in rows
        }


def span(latitude: float) -> tuple[datetime.date, datetime.date]:
    return SOUTH if latitude < 0 else NORTH


def prepare(folder: pathlib.Path, station: str, text: str) -> pathlib.Path:
    """A garden with a station's weather."""
    folder.mkdir()
    latitude = stations.latitude(station)
    start, feast = span(latitude)
    (folder / "weather.csv").write_text(text)
    garden = folder / "garden.toml"
    garden.write_text(stations.smallest_project(latitude, 'weather = "weather.csv"', start, feast))
    return garden


def check(garden: pathlib.Path) -> tuple[int, str]:
    """Exit code and words of `tureen check`, on one line."""
    command = [os.environ["TUREEN"], "check", str(garden)]
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    return run.returncode, " ".join((run.stdout + run.stderr).split())


def edges(record: Record, south: bool) -> tuple[list[tuple[int, int]], list[tuple[int, int]]]:
    """Month and day of last and first frosts by half-year; (0, 0) or (99, 0) without frost."""
    last, first = [], []
    for year in range(min(record).year, max(record).year + 1):
        for month in (1, 7):
            day = datetime.date(year, month, 1)
            days = [day + datetime.timedelta(n) for n in range(185)]
            days = [d for d in days if d.year == year and d.month < month + 6]
            if not all(d in record for d in days):
                continue
            frosts = [(d.month, d.day) for d in days if record[d][0] <= 0]
            if (month == 1) != south:
                last.append(frosts[-1] if frosts else (0, 0))
            else:
                first.append(frosts[0] if frosts else (99, 0))
    return last, first


def named(text: str) -> tuple[int, int]:
    """`24 May` as month and day."""
    date = datetime.datetime.strptime(f"{text} 2000", "%d %B %Y")
    return date.month, date.day


def frost_faults(said: str, record: Record, south: bool) -> list[str]:
    """What `check` says of frost, by its meaning: in that part of the years, to one year, it
    freezes after (before) the day that is named."""
    faults = []
    for kind, side, days in zip(("Last", "First"), ("after", "before"), edges(record, south)):
        season = "spring" if kind == "Last" else "autumn"
        frosty = sum(0 < month < 99 for month, _ in days)
        if not frosty:
            if f"No frost in any {season} of the record." not in said:
                faults.append(f"no frost in any {season}, but not said")
            continue
        found = re.search(
            rf"{kind} frost: (none|{side} [\w ]+?) in half of the years, "
            rf"(none|{side} [\w ]+?) in one year of ten; (\d+) of (\d+) {season}s had frost\.",
            said,
        )
        if not found:
            faults.append(f"no sentence on the {kind.lower()} frost")
            continue
        if (int(found[3]), int(found[4])) != (frosty, len(days)):
            counted = f"{frosty} of {len(days)}"
            faults.append(f"{season}s with frost: {found[3]} of {found[4]}, not {counted}")
        for text, share in ((found[1], 0.5), (found[2], 0.1)):
            if text == "none":
                fewest, most = frosty, len(days)
            else:
                day = named(text.removeprefix(side + " "))
                fewest = sum(d > day if kind == "Last" else d < day for d in days)
                most = fewest + sum(d == day for d in days)
            # Years beyond the day, and years beyond or on it, hold the share between them.
            if not fewest - 1 <= share * len(days) <= most + 1:
                counted = f"{fewest} to {most} of {len(days)} years"
                faults.append(f"{kind.lower()} frost {text} for {share}: {counted}")
    return faults


def sine(tmin: np.ndarray, tmax: np.ndarray, base: float, upper: float) -> float:
    """Degree-days under a sine, by 4000 steps of half a turn."""
    turn = (np.arange(4000) + 0.5) / 4000 * np.pi - np.pi / 2
    curve = (tmin + tmax)[:, None] / 2 + (tmax - tmin)[:, None] / 2 * np.sin(turn)
    return float((np.clip(curve, base, upper) - base).mean(axis=1).sum())


def season(record: Record, start: datetime.date, days: int) -> list[float]:
    """Sums and soil of one span, as `outside::stations` writes them."""
    dates = [start + datetime.timedelta(n) for n in range(days)]
    tmin, tmax = np.array([record[d] for d in dates]).T
    average = (np.clip(tmin, 10, 30) + np.clip(tmax, 10, 30)) / 2 - 10
    before = [start - datetime.timedelta(n) for n in range(6, 0, -1)]
    air = np.array([sum(record[d]) / 2 if d in record else np.nan for d in before + dates])
    soil = np.array([np.nanmean(air[n : n + 7]) for n in range(days)])
    return [
        float(average.sum()),
        sine(tmin, tmax, 4.4, 1000),
        sine(tmin, tmax, 10, 30),
        float(soil[0]),
        float(soil.mean()),
        float(soil[-1]),
    ]


def sums(folder: pathlib.Path, record: Record, latitude: float) -> tuple[int, int, float, float]:
    """Weather years, leap days in them, and how far sums and soil are off at most."""
    start, feast = span(latitude)
    days = (feast - start).days + 3
    worst, worst_soil, leaps = 0.0, 0.0, 0
    with open(folder / "ours.csv", newline="") as file:
        rows = list(csv.reader(file))[1:]
    wanted = []
    for year in range(min(record).year, max(record).year + 1):
        first = start.replace(year=year)
        if first >= min(record) and first + datetime.timedelta(days - 1) <= max(record):
            wanted.append(first)
    if [(int(r[0]), int(r[1])) for r in rows] != [(d.year, days) for d in wanted]:
        sys.exit(f"{folder.name}: other weather years: {[r[:2] for r in rows]}")
    for row, first in zip(rows, wanted):
        theirs = season(record, first, days)
        off = [abs(float(a) - b) for a, b in zip(row[2:], theirs)]
        worst, worst_soil = max([worst, *off[:3]]), max([worst_soil, *off[3:]])
        inside = [first + datetime.timedelta(n) for n in range(days)]
        leaps += sum((d.month, d.day) == (2, 29) for d in inside)
    return len(rows), leaps, worst, worst_soil


def refusals(folder: pathlib.Path, station: str, text: str) -> list[str]:
    """Damaged records must be refused, with the file, the line, what is wrong and a remedy; short
    gaps are filled."""
    lines = text.splitlines()
    leap = next(n for n, line in enumerate(lines) if "-02-29," in line)
    middle = len(lines) // 2
    date, tmin, tmax, rain = lines[middle].split(",")
    day = datetime.date.fromisoformat(date)
    upside_down = f"{date},{float(tmax) + 1},{tmax},{rain}"
    six = f"{day} to {day + datetime.timedelta(5)}"
    six_missing = [f"6 days are missing: {six}", "up to 5 days are filled"]
    swapped = ["lowest temperature is above the highest", "second column is the lowest"]
    too_short = ["does not cover the plan's days", "at least two years"]
    # Name, lines, line of the message, words of the message.
    cases = [
        ("gap", lines[:middle] + lines[middle + 6 :], middle + 1, six_missing),
        ("swap", lines[:middle] + [upside_down] + lines[middle + 1 :], middle + 1, swapped),
        ("short", lines[:150], None, too_short),
    ]
    faults = []
    for name, damaged, line, words in cases:
        garden = prepare(folder / f"{station}-{name}", station, "\n".join(damaged) + "\n")
        code, said = check(garden)
        place = [f"weather.csv:{line}:"] if line else []
        unsaid = [w for w in place + words if w not in said]
        if code == 0 or unsaid:
            faults.append(f"{name}: exit {code}, not said: {unsaid}")
    # Up to five days in a row, a leap day among them, are filled, and it is told which.
    for name, first, days in (("one", middle, 1), ("five", middle, 5), ("leap", leap, 1)):
        kept = lines[:first] + lines[first + days :]
        garden = prepare(folder / f"{station}-{name}", station, "\n".join(kept) + "\n")
        code, said = check(garden)
        filled = [lines[first][:10], lines[first + days - 1][:10], "days filled in"]
        unsaid = [w for w in filled if w not in said]
        if code != 0 or unsaid:
            faults.append(f"{name}: exit {code}, not said: {unsaid}")
    return faults


def main() -> None:
    source = pathlib.Path(os.environ["SCRATCH"]) / "stations"
    faults: list[str] = []
    with tempfile.TemporaryDirectory() as scratch:
        good, bad = pathlib.Path(scratch) / "good", pathlib.Path(scratch) / "bad"
        good.mkdir()
        bad.mkdir()
        for path in sorted(source.glob("*.csv")):
            prepare(good / path.stem, path.stem, path.read_text())
        name = "outside::stations::write_what_we_make_of_them"
        subprocess.run(
            ["cargo", "test", "--quiet", "--locked", "--", "--ignored", "--exact", name],
            env=os.environ | {"TUREEN_EXPORT": str(good)},
            stdout=subprocess.DEVNULL,
            check=True,
        )
        print(f"{'station':<16} years  29 Feb  degree-days off  soil off  frost and refusals")
        for path in sorted(source.glob("*.csv")):
            station, record = path.stem, read(path)
            latitude = stations.latitude(station)
            years, leaps, worst, soil = sums(good / station, record, latitude)
            code, said = check(good / station / "garden.toml")
            found = [f"exit {code}"] if code else []
            found += frost_faults(said, record, latitude < 0)
            found += refusals(bad, station, path.read_text())
            if worst > SUM_TOLERANCE or soil > SOIL_TOLERANCE:
                found.append(f"degree-days off by {worst}, soil by {soil}")
            words = "agree" if not found else f"{len(found)} faults"
            print(f"{station:<16} {years:>5}  {leaps:>6}  {worst:>15.1e}  {soil:>8.1e}  {words}")
            faults += [f"{station}: {fault}" for fault in found]
    if faults:
        sys.exit("\n".join(faults))


if __name__ == "__main__":
    main()
