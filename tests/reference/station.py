"""Station files through `tureen record`: real daily records, written as the archive GHCN-Daily publishes its own (fixed
width, and a line for each day), with days missing and values marked as doubtful. pandas reads the same files again,
by the columns of the archive's readme, and the tables must be equal; `tureen check` must take them.
"""

import datetime
import os
import pathlib
import subprocess
import sys
import tempfile

import numpy as np
import pandas as pd

import stations
import weather

ELEMENTS = ("TMIN", "TMAX", "PRCP")
# Columns of a line of fixed width, counted from 0: station, year, month, element; then, 31 times, value and marks.
WIDTHS = [11, 4, 2, 4] + [5, 1, 1, 1] * 31
LONGEST_GAP = 5

Table = dict[datetime.date, tuple[int, int, int]]


def damaged(path: pathlib.Path, seed: int) -> pd.DataFrame:
    """A record in tenths with holes: single values, short and long runs of days; and marks of doubt."""
    table = pd.read_csv(path, parse_dates=["date"]).set_index("date")
    table = (table * 10).round().astype("Int64")
    table.columns = list(ELEMENTS)
    chance = np.random.default_rng(seed)
    marks = pd.DataFrame("", index=table.index, columns=list(ELEMENTS))
    for element in ELEMENTS:
        table.loc[chance.random(len(table)) < 0.002, element] = pd.NA
        marks.loc[chance.random(len(table)) < 0.002, element] = "I"
    for length in (3, 5, 6, 20):
        at = int(chance.integers(0, len(table) - length))
        table.iloc[at : at + length] = pd.NA
    return table.join(marks, rsuffix="_q")


def write_fixed(table: pd.DataFrame, path: pathlib.Path) -> None:
    """A line for each month and element."""
    with open(path, "w") as file:
        for (year, month), days in table.groupby([table.index.year, table.index.month]):
            for element in ELEMENTS:
                cells = ["-9999   "] * 31
                for day, row in days.iterrows():
                    if not pd.isna(row[element]):
                        cells[day.day - 1] = f"{row[element]:>5} {row[element + '_q'] or ' '}S"
                file.write(f"XX000000001{year:04}{month:02}{element}{''.join(cells)}\n")


def write_wide(table: pd.DataFrame, path: pathlib.Path) -> None:
    """A line for each day, in degrees Celsius and millimetres."""
    with open(path, "w") as file:
        file.write('"STATION","NAME","DATE",' + ",".join(f'"{e}","{e}_ATTRIBUTES"' for e in ELEMENTS) + "\n")
        for day, row in table.iterrows():
            cells = ["" if pd.isna(row[e]) else f"{row[e] / 10:.1f}" for e in ELEMENTS]
            marks = [f",{row[e + '_q']},S" for e in ELEMENTS]
            values = ",".join(f'"{c}","{m}"' for c, m in zip(cells, marks))
            file.write(f'"XX1","SOMEWHERE, XX","{day:%Y-%m-%d}",{values}\n')


def read_fixed(path: pathlib.Path) -> Table:
    """All days with three values that are not marked."""
    raw = pd.read_fwf(path, widths=WIDTHS, header=None, dtype=str, keep_default_na=False)
    found: dict[datetime.date, dict[str, int]] = {}
    for line in raw.itertuples(index=False):
        for day in range(31):
            value, _, quality, _ = (cell.strip() for cell in line[4 + 4 * day : 8 + 4 * day])
            if value != "-9999" and not quality:
                date = datetime.date(int(line[1]), int(line[2]), day + 1)
                found.setdefault(date, {})[line[3]] = int(value)
    whole = {date: day for date, day in found.items() if len(day) == 3}
    return {date: tuple(day[e] for e in ELEMENTS) for date, day in whole.items()}


def read_wide(path: pathlib.Path) -> Table:
    """The same from a line for each day."""
    raw = pd.read_csv(path, dtype=str, keep_default_na=False)
    found = {}
    for _, row in raw.iterrows():
        sound = all(row[e] and not row[f"{e}_ATTRIBUTES"].split(",")[1] for e in ELEMENTS)
        if sound:
            values = tuple(round(float(row[e]) * 10) for e in ELEMENTS)
            found[datetime.date.fromisoformat(row["DATE"])] = values
    return found


def stays(days: Table) -> Table:
    """The days of years that are not left out: years that lie, wholly or in part, in a gap of more than five days,
    in which days of years left out count as missing; the days before the first and after the last are no gap."""
    kept = {date: day for date, day in days.items() if day[0] <= day[1]}
    while kept:
        gone: set[int] = set()
        dates = sorted(kept)
        for a, b in zip(dates, dates[1:]):
            whole = (a.month, a.day, b.month, b.day) == (12, 31, 1, 1)
            if (b - a).days - 1 > LONGEST_GAP and not whole:
                gone |= set(range((a + datetime.timedelta(1)).year, (b - datetime.timedelta(1)).year + 1))
        if not gone:
            break
        kept = {date: day for date, day in kept.items() if date.year not in gone}
    return kept


def read_ours(path: pathlib.Path) -> Table:
    """Our table, in tenths."""
    raw = pd.read_csv(path, comment="#")
    columns = ["tmin_c", "tmax_c", "rain_mm"]
    return {
        datetime.date.fromisoformat(row["date"]): tuple(round(float(row[c]) * 10) for c in columns)
        for _, row in raw.iterrows()
    }


def main() -> None:
    source = pathlib.Path(os.environ["SCRATCH"]) / "stations"
    faults: list[str] = []
    print(f"{'station':<16} {'days':>6} {'written':>8} {'years left out':>15}")
    with tempfile.TemporaryDirectory() as scratch:
        for seed, path in enumerate(sorted(source.glob("*.csv"))):
            station = path.stem
            table = damaged(path, seed)
            kinds = [("dly", write_fixed, read_fixed), ("csv", write_wide, read_wide)]
            for kind, write, read in kinds:
                file = pathlib.Path(scratch) / f"{station}.{kind}"
                write(table, file)
                folder = pathlib.Path(scratch) / f"{station}-{kind}"
                garden = weather.prepare(folder, station, "")
                out = folder / "weather.csv"
                command = [os.environ["TUREEN"], "record", str(file), "--out", str(out)]
                run = subprocess.run(command, capture_output=True, text=True, check=False)
                if run.returncode:
                    faults.append(f"{station}.{kind}: {run.stderr}")
                    continue
                theirs, ours = stays(read(file)), read_ours(out)
                if ours != theirs:
                    odd = sorted(set(ours.items()) ^ set(theirs.items()))[:3]
                    faults.append(f"{station}.{kind}: {len(ours)} days, pandas has {len(theirs)}: {odd}")
                code, said = weather.check(garden)
                if code:
                    faults.append(f"{station}.{kind}: check ends with {code}: {said[:300]}")
            all_years = {day.year for day in table.index}
            gone = len(all_years - {day.year for day in ours})
            print(f"{station:<16} {len(table):>6} {len(ours):>8} {gone:>15}")
    if faults:
        sys.exit("\n".join(faults))


if __name__ == "__main__":
    main()
