"""Packet days on real records: how long each crop takes at its usual time.

The days are computed here once more, in Python and from the catalogue's files, and compared with
those of our own growth; then the median over the stations and three generated climates is compared
with the range on packets. (The tests do the same with generated weather for the stations, too.)
Formulas: days to come up add up as 1/days at the soil's temperature (mean air of seven days), then
degree-days by average or single sine (Baskerville and Emin 1969), none below ten hours of day, and
on no day more than lets the crop be ripe in four fifths of the short end on packets.
"""

import bisect
import csv
import datetime
import itertools
import math
import os
import pathlib
import shutil
import statistics
import subprocess
import sys
import tomllib

import stations

STATIONS = ["champion", "new-york", "seattle", "cambridge", "brussels"]
# Generated weather: the other places at which packet days were calibrated.
SCENARIOS = {"soup-day": 44.3, "wrap-day": 42.0, "nine-grades": 43.1}
LATITUDES = {name: stations.latitude(name) for name in STATIONS} | SCENARIOS
DATA = pathlib.Path("src/catalogue/data")
EXPORT = "catalogue::calibration::export::days_at_the_stations"
# Shelling pea has a published sum; planted on 15 March in Delaware it took 66 to 80 days (UD-GDD).
PUBLISHED = {"shelling pea": (66, 80)}
# A median may lie so far outside its range, as a part of it, before this check fails: references
# were set by generated years, and the records of two stations hold four years only.
MARGIN = 0.05
# Whole weeks that hold two years.
SPAN = 105 * 7
HEAD_START = 14
# However warm it is, a crop is not ripe in fewer days than this part of the short end on packets.
QUICKEST = 0.8
# Open ground in sun is warmer than the mean of the air.
OPEN_GROUND = 2


def export() -> tuple[pathlib.Path, list[dict[str, str]]]:
    """Lets our tests write what they compute from the same records."""
    folder = pathlib.Path(os.environ["SCRATCH"]) / "packet-days"
    folder.mkdir(exist_ok=True)
    for name in STATIONS:
        shutil.copy(folder.parent / "stations" / f"{name}.csv", folder)
    for name in SCENARIOS:
        rows = pathlib.Path("scenarios", name, "weather.csv").read_text().splitlines(keepends=True)
        (folder / f"{name}.csv").write_text("".join(r for r in rows if not r.startswith("#")))
    lines = [f"{name} {latitude}" for name, latitude in LATITUDES.items()]
    (folder / "stations.txt").write_text("\n".join(lines) + "\n")
    command = ["cargo", "test", "--quiet", "--locked", "--", "--ignored", "--exact", EXPORT]
    subprocess.run(
        command, env=os.environ | {"TUREEN_EXPORT": str(folder)}, check=True, stdout=subprocess.DEVNULL
    )
    with open(folder / "packet_days.csv", newline="") as file:
        return folder, list(csv.DictReader(file))


def crops() -> dict[str, dict]:
    """All crops of the catalogue by name, germination tables put in."""
    sections = tomllib.loads((DATA / "germination.toml").read_text()).values()
    table = {row: days for section in sections for row, days in section.items()}
    found = {}
    for path in sorted(DATA.glob("*.toml")):
        for crop in tomllib.loads(path.read_text()).get("crop", []):
            if "table" in crop["germination"]:
                crop["germination"] = table[crop["germination"]["table"]]
            elif extended := crop["germination"].get("extended"):
                crop["germination"] = table[extended["row"]]
                crop["least"] = extended["least"]
            found[crop["name"]] = crop
    return found


def days_up(crop: dict, soil: float) -> float | None:
    """Days to come up at a steady temperature."""
    known = crop["germination"]
    if isinstance(known, list):
        column, beyond = divmod(soil, 5)
        if soil < 0 or column >= len(known):
            return None
        left = known[int(column)]
        right = known[int(column) + 1] if beyond and column + 1 < len(known) else left
        days = left + (right - left) * beyond / 5
        if not math.isnan(days):
            return days
        first, printed = next((5.0 * n, days) for n, days in enumerate(known) if not math.isnan(days))
        least = crop.get("least", math.inf)
        return printed * (first - least) / (soil - least) if least < soil < first else None
    known = known["range"]
    if not known["min"] < soil <= known["max"]:
        return None
    return known["days"] * max(1.0, (known["optimum"] - known["min"]) / (soil - known["min"]))


def best_days_up(crop: dict) -> float:
    known = crop["germination"]
    return min(d for d in known if not math.isnan(d)) if isinstance(known, list) else known["range"]["days"]


def above(base: float, tmin: float, tmax: float) -> float:
    """The area between a sine through the extremes and a threshold."""
    mean = (tmin + tmax) / 2 - base
    if tmin >= base or tmax <= base:
        return max(mean, 0.0)
    half = (tmax - tmin) / 2
    crossing = math.asin(-mean / half)
    return (mean * (math.pi / 2 - crossing) + half * math.cos(crossing)) / math.pi


def degree_days(ripening: dict, tmin: float, tmax: float) -> float:
    base, upper = ripening["base"], ripening.get("upper", math.inf)
    if ripening["method"] == "average":
        low, high = (min(max(t, base), upper) for t in (tmin, tmax))
        return (low + high) / 2 - base
    return above(base, tmin, tmax) - (above(upper, tmin, tmax) if upper < math.inf else 0.0)


class Place:
    """A record with what all crops need of it."""

    def __init__(self, folder: pathlib.Path, name: str) -> None:
        with open(folder / f"{name}.csv", newline="") as file:
            rows = list(csv.DictReader(file))
        self.first = datetime.date.fromisoformat(rows[0]["date"])
        self.days = [(float(r["tmin_c"]), float(r["tmax_c"])) for r in rows]
        means = [sum(day) / 2 for day in self.days]
        self.soil = [statistics.fmean(means[max(0, n - 6) : n + 1]) + OPEN_GROUND for n in range(len(means))]
        tan = math.tan(math.radians(LATITUDES[name]))
        dates = [self.first + datetime.timedelta(n) for n in range(len(means))]
        self.hours = []
        for date in dates:
            sun = 0.409 * math.sin(2 * math.pi / 365 * date.timetuple().tm_yday - 1.39)
            self.hours.append(24 / math.pi * math.acos(-tan * math.tan(sun)))

    def starts(self, day_of_year: int) -> list[int]:
        """The same day of every year after which the record runs for two years."""
        found = []
        for year in range(self.first.year, self.first.year + 100):
            january = (datetime.date(year, 1, 1) - self.first).days
            if january >= 0 and january + SPAN <= len(self.days):
                found.append(january + day_of_year)
        return found


def need(crop: dict, way: str) -> tuple[str, float]:
    """From when degree-days are counted, and how many are needed."""
    ripening = crop["ripening"]
    reference = min(ripening["reference"], ripening.get("upper", math.inf))
    per_day = reference - ripening["base"]
    up = days_up(crop, reference) or best_days_up(crop)
    if way == "sown":
        if "thermal_from_sowing" in ripening:
            return "sowing", ripening["thermal_from_sowing"]
        return "up", (ripening["days_from_sowing"] - up) * per_day
    days = ripening.get("days_from_planting") or ripening["days_from_sowing"] - up - HEAD_START
    return "sowing", days * per_day


def most_a_day(crop: dict, way: str) -> float:
    """The degree-days of the warmest day that counts: ripe on none but such is ripe at the quickest."""
    ripening = crop["ripening"]
    per_day = min(ripening["reference"], ripening.get("upper", math.inf)) - ripening["base"]
    counted_from, amount = need(crop, way)
    short = ripening.get("short_from_sowing" if way == "sown" else "short_from_planting")
    if short is None:
        return math.inf
    return max(per_day, amount / (QUICKEST * short - (best_days_up(crop) if counted_from == "up" else 0.0)))


def median_days(crop: dict, way: str, place: Place, start: int) -> float:
    """Days to the first pick in the median year; infinite where it is not ripe in two years."""
    least = max(4.0, crop["ground"]["sow" if way == "sown" else "set_out"])
    rots_after = crop["ground"].get("rots_after", math.inf)
    light = [hours >= 10 for hours in place.hours]
    most = most_a_day(crop, way)
    daily = [min(degree_days(crop["ripening"], *day), most) * ok for day, ok in zip(place.days, light)]
    warmth = list(itertools.accumulate(daily, initial=0.0))
    rates = [1 / days if (days := days_up(crop, soil)) else 0.0 for soil in place.soil]
    rising = list(itertools.accumulate(rates, initial=0.0))

    def after(sums: list[float], day: int, amount: float) -> int:
        """The first day by whose end the days after `day` have summed up to an amount."""
        return bisect.bisect_left(sums, sums[day + 1] + amount - 1e-7) - 1

    counted_from, amount = need(crop, way)
    found = []
    for day in place.starts(start):
        end = day - start + SPAN
        while day < end and place.soil[day] < least:
            day += 1
        up = after(rising, day, 1.0) if way == "sown" else day
        if up - day > rots_after:
            up = end
        ripe = max(up, after(warmth, up if counted_from == "up" else day, amount)) if up < end else end
        found.append(ripe - day if ripe < end else math.inf)
    return sorted(found)[len(found) // 2]


def main() -> None:
    folder, rows = export()
    known = crops()
    places = {name: Place(folder, name) for name in LATITUDES}
    greatest, wrong, by_crop = 0.0, [], {}
    for row in rows:
        crop, way, place = known[row["crop"]], row["way"], places[row["station"]]
        theirs = median_days(crop, way, place, int(row["start"]))
        ours = float(row["days"]) if int(row["days"]) >= 0 else math.inf
        deviation = 0.0 if theirs == ours else abs(theirs - ours)
        greatest = max(greatest, deviation)
        if deviation > 1:
            wrong.append(f"{row}: {theirs} days in Python")
        span = (int(row["low"]), int(row["high"]))
        by_crop.setdefault((row["crop"], way, PUBLISHED.get(row["crop"], span)), []).append(ours)
    outside = 0
    print(f"{'crop':20}{'from':9}{'range':>9}{'median':>8}")
    for (name, way, (low, high)), days in by_crop.items():
        median = sorted(days)[len(days) // 2]
        note = "" if low <= median <= high else "  outside"
        outside += bool(note)
        if not low * (1 - MARGIN) <= median <= high * (1 + MARGIN):
            wrong.append(f"{name}, {way}: {median}, far outside {low} to {high}")
        print(f"{name:20}{way:9}{low:>5}-{high:<4}{median:>7}{note}")
    print(f"{len(rows)} medians at {len(places)} places, greatest deviation {greatest:g} days")
    print(f"{len(by_crop) - outside} of {len(by_crop)} within their range")
    if wrong:
        sys.exit("\n".join(wrong))


if __name__ == "__main__":
    main()
