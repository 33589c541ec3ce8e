"""Daily weather records that packages of the Python and npm registries carry, as data only.

`python stations.py FOLDER [VEGA]` writes one NAME.csv per station in the form that tureen reads
(date, tmin_c, tmax_c, rain_mm) and prints what it wrote. VEGA is the unpacked npm package
`vega-datasets`; without it, Seattle and New York are left out.

Sources:
- Python package `aquacrop` (BSD licence): text files beside its model, one line a day.
- npm package `vega-datasets` (BSD licence): `weather.csv`, 2012 to 2015.
Latitudes: Champion, Nebraska from the package's own site file; all others from memory, to the
tenth of a degree that day length needs.
"""

import csv
import datetime
import pathlib
import sys
from importlib import resources
from typing import NamedTuple


class Day(NamedTuple):
    """One day; temperatures in C, rain in mm."""

    date: datetime.date
    tmin: float
    tmax: float
    rain: float


# Station: file in `aquacrop.data`, latitude.
AQUACROP = {
    "champion": ("champion_climate.txt", 40.4),
    "cambridge": ("cambridge_climate.txt", 52.2),
    "brussels": ("brussels_climate.txt", 50.8),
    "suffolk": ("suffolk_climate.txt", 52.2),
    "norfolk": ("norfolk_climate.txt", 52.6),
    "lincolnshire": ("lincolnshire_climate.txt", 53.2),
    "north-yorks": ("north_yorks_climate.txt", 54.2),
    "northumberland": ("northumberland_climate.txt", 55.2),
    "tunis": ("tunis_climate.txt", 36.8),
    "cordoba": ("cordoba_climate.txt", -31.4),
    "hyderabad": ("hyderabad_climate.txt", 17.4),
}

# Station: name in `weather.csv` of `vega-datasets`, latitude.
VEGA = {"seattle": ("Seattle", 47.5), "new-york": ("New York", 40.8)}


def latitude(station: str) -> float:
    """Degrees, south negative."""
    return (AQUACROP | VEGA)[station][1]


def aquacrop(station: str) -> list[Day]:
    """Day, month, year, least, greatest, rain, and an evaporation that is not read here."""
    text = resources.files("aquacrop.data").joinpath(AQUACROP[station][0]).read_text()
    days = []
    for line in text.splitlines()[1:]:
        if not line.strip():
            continue
        day, month, year, tmin, tmax, rain = line.split()[:6]
        date = datetime.date(int(year), int(month), int(day))
        days.append(Day(date, float(tmin), float(tmax), float(rain)))
    return days


def vega(station: str, package: pathlib.Path) -> list[Day]:
    """Rows of one place."""
    with open(package / "data" / "weather.csv", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["location"] == VEGA[station][0]]
    return [
        Day(
            datetime.date.fromisoformat(row["date"].replace("/", "-")[:10]),
            float(row["temp_min"]),
            float(row["temp_max"]),
            float(row["precipitation"]),
        )
        for row in rows
    ]


def write(days: list[Day], path: pathlib.Path) -> None:
    """Writes a record as tureen reads it, to hundredths as the packages give it."""
    with open(path, "w") as file:
        file.write("date,tmin_c,tmax_c,rain_mm\n")
        for day in days:
            file.write(f"{day.date},{day.tmin:.2f},{day.tmax:.2f},{day.rain:.2f}\n")


def smallest_project(latitude: float, weather: str, start: datetime.date, feast: datetime.date) -> str:
    """A project file that is valid and small, for a place whose `[place]` goes on with `weather`."""
    return f"""
[project]
name = "Reference"
feast = {feast}
[place]
latitude = {latitude}
{weather}
[calendar]
start = {start}
terms = [{{ name = "Year", from = {start}, to = {feast} }}]
[[grade]]
id = "1"
classes = [{{ name = "1a", children = 20, day = "Mon" }}]
[[dish.ingredient]]
crop = "radish"
grade = "1"
grams_per_portion = 5
[[bed]]
id = "1"
length_m = 3.6
width_m = 1.2
"""


def main() -> None:
    folder = pathlib.Path(sys.argv[1])
    records = {name: aquacrop(name) for name in AQUACROP}
    if len(sys.argv) > 2:
        records |= {name: vega(name, pathlib.Path(sys.argv[2])) for name in VEGA}
    for name, days in records.items():
        write(days, folder / f"{name}.csv")
        print(f"{name}: {days[0].date} to {days[-1].date}, {len(days)} days, {latitude(name)} N")


if __name__ == "__main__":
    main()
