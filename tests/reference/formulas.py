"""Our formulas against outside libraries. Computes a grid with them and compares it with the
committed fixtures, which `cargo test` holds our own figures to; `--write` renews the fixtures.

What a library does by other constants than FAO-56 is said at the function.
"""

import datetime
import itertools
import math
import pathlib
import sys
from collections.abc import Callable, Iterator
from importlib.metadata import version

import astral
import numpy as np
import pandas as pd
import pyet
import refet.calcs
from astral.sun import SunDirection, sunrise, sunset, time_of_transit
from scipy import integrate, stats

Row = tuple[float, ...]

FIXTURES = pathlib.Path(__file__).parent / "fixtures"
TOLERANCE = 1e-9
LATITUDES = (-55, -37.2, -20, 0, 17.4, 36, 44.3, 52, 60, 65)
DAYS = range(1, 366, 13)
# Without 29 February; day of the year and date fit each other.
YEAR = 2027
PLACES = list(itertools.product(LATITUDES, DAYS))


def date(day: int) -> datetime.date:
    return datetime.date(YEAR, 1, 1) + datetime.timedelta(day - 1)


def radiation() -> Iterator[Row]:
    """FAO-56 equations 21 and 34: radiation above the air by both libraries, MJ/m2, hours."""
    for latitude, day in PLACES:
        north = math.radians(latitude)
        index = pd.DatetimeIndex([date(day)])
        yield (
            latitude,
            day,
            float(refet.calcs.ra_daily(north, np.array(day))),
            float(pyet.extraterrestrial_r(index, north).iloc[0]),
            float(np.asarray(pyet.daylight_hours(index, north))[0]),
        )


def daylight() -> Iterator[Row]:
    """Hours between rise and set: the sun's middle without air, and as almanacs print it."""
    for latitude, day in PLACES:
        observer = astral.Observer(latitude, 0.0)

        def bare(direction: SunDirection) -> datetime.datetime:
            return time_of_transit(observer, date(day), 90.0, direction, with_refraction=False)

        plain = bare(SunDirection.SETTING) - bare(SunDirection.RISING)
        seen = sunset(observer, date(day)) - sunrise(observer, date(day))
        yield (latitude, day, plain.total_seconds() / 3600, seen.total_seconds() / 3600)


def evapotranspiration() -> Iterator[Row]:
    """Hargreaves, FAO-56 equation 52, mm. The library takes the latent heat at the day's
    temperature; FAO-56 the constant 0.408. The first figure has that exchanged, the second is
    the library's own."""
    extremes = ((-8, 2), (2.5, 11), (4, 4), (9, 24), (15, 38), (22, 30), (-25, -19))
    for latitude, day, (tmin, tmax) in itertools.product(LATITUDES, range(1, 366, 61), extremes):
        index = pd.DatetimeIndex([date(day)])
        low, high = (pd.Series([float(t)], index) for t in (tmin, tmax))
        mean = (low + high) / 2
        own = pyet.hargreaves(mean, high, low, math.radians(latitude)).iloc[0]
        latent = pyet.calc_lambda(mean).iloc[0]
        yield (latitude, day, tmin, tmax, float(own * latent * 0.408), float(own))


def degree_days() -> Iterator[Row]:
    """Degree-days of one day: the area under a sine, integrated numerically; C-days."""
    thresholds = ((0, 30), (4.4, 29), (10, 30), (10, 100))
    extremes = itertools.product((-12, -1, 4.4, 9, 14, 21, 31), (0.5, 6, 13, 22))
    for (base, upper), (tmin, width) in itertools.product(thresholds, extremes):
        tmax = tmin + width
        mean, half = (tmin + tmax) / 2, width / 2

        def warmth(turn: float) -> float:
            return min(max(mean + half * math.sin(turn), base), upper) - base

        # The quarter turn back and forth is the same; corners are given to the integrator.
        corners = [math.asin((t - mean) / half) for t in (base, upper) if tmin < t < tmax]
        area, _ = integrate.quad(
            warmth, -math.pi / 2, math.pi / 2, points=corners, epsabs=1e-12, epsrel=1e-12
        )
        yield (base, upper, tmin, tmax, area / math.pi)


def seeds() -> Iterator[Row]:
    """The fewest seeds of which so many grow with a chance of 90 %."""
    plants = (1, 2, 3, 5, 8, 13, 20, 36, 60, 100, 240, 500, 2000)
    for wanted, grows in itertools.product(plants, (0.2, 0.41, 0.55, 0.68, 0.765, 0.85, 0.97)):
        # Plants beyond the seeds: a negative binomial number.
        failures = stats.nbinom.ppf(0.9, wanted, grows)
        n = wanted + int(failures)
        assert stats.binom.sf(wanted - 1, n, grows) >= 0.9 - 1e-12
        assert stats.binom.sf(wanted - 1, n - 1, grows) < 0.9
        yield (wanted, grows, n)


def further_years() -> Iterator[Row]:
    """Fewest and most hits of further trials that the chi-square test of two shares, without
    correction, does not tell from the hits seen: a p-value of 5 % or more."""

    def alike(hits: int, more: int, trials: int, further: int) -> bool:
        # With no hit at all, or nothing else, there is nothing to test.
        if hits + more in (0, trials + further):
            return True
        table = [[hits, trials - hits], [more, further - more]]
        return stats.chi2_contingency(table, correction=False).pvalue >= 0.05

    as_many = [(trials, trials) for trials in (1, 4, 9, 11, 24, 30, 31, 60, 100, 1000)]
    for trials, further in as_many + [(300, m) for m in (4, 10, 30, 60, 120)] + [(30, 100)]:
        for hits in sorted({round(trials * tenths / 10) for tenths in range(11)}):
            within = [more for more in range(further + 1) if alike(hits, more, trials, further)]
            yield (hits, trials, further, within[0], within[-1])


# File: columns, libraries, source of the formula, rows.
TABLES: dict[str, tuple[str, tuple[str, ...], str, Callable[[], Iterator[Row]]]] = {
    "radiation": (
        "latitude,day,refet_mj,pyet_mj,pyet_hours",
        ("refet", "pyet"),
        "FAO-56 equations 21 to 25 and 34",
        radiation,
    ),
    "daylight": (
        "latitude,day,middle_hours,almanac_hours",
        ("astral",),
        "its own course of the sun; with and without disc and refraction",
        daylight,
    ),
    "evapotranspiration": (
        "latitude,day,tmin_c,tmax_c,fao56_mm,pyet_mm",
        ("pyet",),
        "Hargreaves, FAO-56 equation 52; fao56_mm with its 0.408 for the latent heat",
        evapotranspiration,
    ),
    "degree_days": (
        "base_c,upper_c,tmin_c,tmax_c,sine",
        ("scipy",),
        "Baskerville and Emin 1969, integrated numerically",
        degree_days,
    ),
    "seeds": (
        "plants,grows,seeds",
        ("scipy",),
        "binomial distribution, chance 0.9",
        seeds,
    ),
    "further_years": (
        "hits,trials,further,fewest,most",
        ("scipy",),
        "Krishnamoorthy and Peng 2011, 95 %: Pearson's chi-square without correction",
        further_years,
    ),
}


def head(name: str) -> list[str]:
    """The first two lines of a fixture."""
    columns, libraries, source, _ = TABLES[name]
    made = ", ".join(f"{library} {version(library)}" for library in libraries)
    return [f"# {made}: {source}; by tests/reference/formulas.py", columns]


def write(name: str, rows: list[Row]) -> None:
    lines = head(name) + [",".join(f"{value:.13g}" for value in row) for row in rows]
    (FIXTURES / f"{name}.csv").write_text("\n".join(lines) + "\n")


def deviation(name: str, rows: list[Row]) -> float:
    """The greatest relative deviation of the fixture from what was computed now."""
    lines = (FIXTURES / f"{name}.csv").read_text().splitlines()
    if lines[:2] != head(name):
        sys.exit(f"{name}.csv was made otherwise: {lines[0]}; now: {head(name)[0]}")
    kept = [tuple(float(cell) for cell in line.split(",")) for line in lines[2:]]
    if [len(row) for row in kept] != [len(row) for row in rows]:
        sys.exit(f"{name}.csv has other rows than the script")
    pairs = [pair for old, new in zip(kept, rows) for pair in zip(old, new)]
    return max(abs(old - new) / max(1.0, abs(new)) for old, new in pairs)


def main() -> None:
    failed = []
    print(f"{'fixture':<20} {'rows':>5}  greatest deviation from the libraries")
    for name, (_, _, _, compute) in TABLES.items():
        rows = list(compute())
        if not all(math.isfinite(value) for row in rows for value in row):
            sys.exit(f"{name}: a library gave no number")
        if "--write" in sys.argv:
            write(name, rows)
        off = deviation(name, rows)
        print(f"{name:<20} {len(rows):>5}  {off:.1e}")
        if off > TOLERANCE:
            failed.append(name)
    if failed:
        sys.exit(f"Fixtures that differ from the libraries: {', '.join(failed)}")


if __name__ == "__main__":
    main()
