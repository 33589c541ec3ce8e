"""The projects of the back-test: four dishes at six stations, on each half of the record.

A record is cut into years that begin with the plan's first day, and these into halves in two ways:
early and late, which shows a change of climate; every second year, which shows what chance and
choice alone do. Each half is to be planned on in turn.

The dish's calendar is moved by whole weeks, so that the season suits the place: to where the
weekly mean temperatures from start to feast are nearest (least squares) to those of the
scenario's own weather. Only the early half is looked at.
"""

import csv
import datetime
import functools
import os
import pathlib
import re
from statistics import mean
from typing import NamedTuple

from stations import Day, latitude

ROOT = pathlib.Path(__file__).resolve().parents[2]
SCRATCH = pathlib.Path(os.environ["SCRATCH"])
OUT = SCRATCH / "backtest"

# Other British stations of the package go with Cambridge to 0.88 and more, so they would not add
# much; other records are of few years.
STATIONS = ["champion", "brussels", "cambridge", "northumberland", "tunis", "cordoba"]
SMALL = ["soup-day", "wrap-day", "autumn-down-under"]
# The largest dish takes minutes to plan where it is warm all the year.
DISHES = {s: SMALL if s in ("tunis", "cordoba") else [*SMALL, "nine-grades"] for s in STATIONS}
DATE = re.compile(r"\b\d{4}-\d\d-\d\d\b")
WEEK = datetime.timedelta(weeks=1)

Year = list[Day]


class Run(NamedTuple):
    """A plan to be made: the halves are named `early`, `late`, `even`, `odd`."""

    station: str
    dish: str
    seen: str
    folder: pathlib.Path


@functools.cache
def record(path: pathlib.Path) -> list[Day]:
    """Reads a weather file of tureen."""
    rows = csv.reader(line for line in path.read_text().splitlines() if line[0] != "#")
    next(rows)
    return [Day(datetime.date.fromisoformat(d), float(n), float(x), float(r)) for d, n, x, r in rows]


def span(garden: str) -> tuple[datetime.date, datetime.date]:
    """First and last day of a plan: the Monday of what is sown first, and the rain date or feast."""

    def dates(key: str) -> list[datetime.date]:
        found = re.findall(rf"^{key} = (\S+)", garden, re.MULTILINE)
        return [datetime.date.fromisoformat(date) for date in found]

    first = min(dates("start") + dates("sown"))
    return first - datetime.timedelta(days=first.weekday()), max(dates("feast") + dates("rain_date"))


def weekly(days: list[Day]) -> list[float]:
    """Mean temperature of each of the 52 weeks of the year, over all years."""
    warmth: list[list[float]] = [[] for _ in range(52)]
    for day in days:
        warmth[min(51, (day.date.timetuple().tm_yday - 1) // 7)].append((day.tmin + day.tmax) / 2)
    return [mean(week) for week in warmth]


def moved(garden: str, home: list[Day], place: list[Day]) -> str:
    """The garden with all its dates moved to where the place is as warm as the garden's home."""
    first, last = span(garden)
    start, length = first.timetuple().tm_yday // 7, (last - first).days // 7
    there, here = weekly(home), weekly(place)

    def misfit(shift: int) -> float:
        weeks = range(start, start + length)
        return mean((there[w % 52] - here[(w + shift) % 52]) ** 2 for w in weeks)

    shift = min(range(-26, 26), key=misfit) * WEEK
    return DATE.sub(lambda m: str(datetime.date.fromisoformat(m[0]) + shift), garden)


def years(days: list[Day], first: datetime.date) -> list[Year]:
    """The record's whole years, each from the month and day of `first` on."""
    starts = [n for n, d in enumerate(days) if (d.date.month, d.date.day) == (first.month, first.day)]
    cut = [days[a:b] for a, b in zip(starts, starts[1:])]
    tail = days[starts[-1] :]
    return cut + ([tail] if len(tail) >= 365 else [])


def joined(parts: list[Year]) -> Year:
    """Years one after the other as one record; a leap day is left out or doubled where need be."""
    date, result = parts[0][0].date, []
    for part in parts:
        by_day = {(d.date.month, d.date.day): d for d in part}
        until = date.replace(year=date.year + 1)
        while date < until:
            day = by_day.get((date.month, date.day)) or by_day[(2, 28)]
            result.append(day._replace(date=date))
            date += datetime.timedelta(days=1)
    return result


def write(path: pathlib.Path, garden: str, days: list[Day], place: float) -> None:
    """Writes a project file and the weather beside it."""
    weather = path.with_suffix(".csv")
    rows = "".join(f"{d.date},{d.tmin:.2f},{d.tmax:.2f},{d.rain:.2f}\n" for d in days)
    weather.write_text("date,tmin_c,tmax_c,rain_mm\n" + rows)
    garden = re.sub(r"^latitude = \S+", f"latitude = {place}", garden, flags=re.MULTILINE)
    path.write_text(garden.replace('"weather.csv"', f'"{weather.name}"'))


def prepare(station: str, dish: str) -> list[Run]:
    """Writes the projects of one dish at one station."""
    days = record(SCRATCH / "stations" / f"{station}.csv")
    home = ROOT / "scenarios" / dish
    early = days[: len(days) // 2]
    garden = moved((home / "garden.toml").read_text(), record(home / "weather.csv"), early)
    all_years = years(days, span(garden)[0])
    middle = len(all_years) // 2
    halves = {
        "early": all_years[:middle],
        "late": all_years[middle:],
        "even": all_years[::2],
        "odd": all_years[1::2],
    }
    other = {"early": "late", "late": "early", "even": "odd", "odd": "even"}
    runs = []
    for seen, unseen in other.items():
        folder = OUT / f"{station} {dish} {seen}"
        folder.mkdir(parents=True, exist_ok=True)
        write(folder / "seen.toml", garden, joined(halves[seen]), latitude(station))
        write(folder / "unseen.toml", garden, joined(halves[unseen]), latitude(station))
        runs.append(Run(station, dish, seen, folder))
    return runs


def without(garden: str, crop: str) -> str:
    """The garden without an ingredient and what is said of its crop."""
    parts = re.split(r"(?m)^(?=\[)", garden)
    own = (f"[crop.{crop}]", f'[crop."{crop}"]')

    def belongs(part: str) -> bool:
        return part.startswith(own) or (
            part.startswith("[[dish.ingredient]]") and f'crop = "{crop}"' in part
        )

    assert any(belongs(part) for part in parts), crop
    return "".join(part for part in parts if not belongs(part))
