"""Reads the handouts with outside readers: calendars with icalendar, data with jsonschema, tables
with Python's csv, the workbook with openpyxl, and holds all of them to one another."""

import csv
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from datetime import date, datetime, time
from pathlib import Path

import openpyxl
from handouts_hostile import HOSTILE
from icalendar import Calendar, Event
from jsonschema import Draft202012Validator

TUREEN = os.environ["TUREEN"]
# The program with its workbook; without it, that file is not looked at.
WITH_WORKBOOK = os.environ.get("TUREEN_WORKBOOK")
SCENARIOS = ["two-beds", "soup-day", "autumn-down-under"]
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\uff1d", "\uff0b", "\uff0d", "\uff20")
UNSEEN = re.compile("[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]")


def run(program: str, *arguments: str | Path) -> None:
    done = subprocess.run([program, *map(str, arguments)], capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{program} {arguments} ended with {done.returncode}:\n{done.stderr}")


def make(project: Path, saved: int = 1_800_000_000) -> Path:
    """Plans a project and writes its handouts; `saved` is the moment of the plan, in seconds."""
    run(TUREEN, "plan", project, "--out", project.parent)
    os.utime(project.with_name("plan.json"), (saved, saved))
    out = project.parent / "out"
    run(WITH_WORKBOOK or TUREEN, "handouts", project, "--out", out)
    return out


# -- reading ------------------------------------------------------------------------------------


def events(path: Path) -> list[Event]:
    return list(Calendar.from_ical(path.read_bytes()).walk("VEVENT"))


def when(event: Event) -> tuple[str, str, str]:
    """First day, last day and time of day of an event, as the data file writes them."""
    start, end = event.decoded("DTSTART"), event.decoded("DTEND")
    if isinstance(start, datetime):
        assert start.tzinfo is None and start < end, "times float"
        return start.date().isoformat(), start.date().isoformat(), start.strftime("%H:%M")
    return start.isoformat(), date.fromordinal(end.toordinal() - 1).isoformat(), ""


def table(path: Path) -> list[list[str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file, strict=True))


def title(step: dict) -> str:
    who = {"families": "Families", "adult": "An adult", "anyone": "Whoever is there"}
    name = step["class"] or who[step["hands"]]
    chance = step["chance"]
    last = f" (chance {chance['number']} of {chance['of']})" if chance else ""
    return f"{name}: {step['title']}{last}"


def planned(data: dict, wanted: Callable[[dict], bool] = lambda _: True) -> Counter[tuple]:
    """The steps of the data file as a calendar should show them."""
    steps = [s for s in data["steps"] if wanted(s)]
    return Counter((title(s), s["from"], s["to"], s["at"] or "") for s in steps)


# -- checking: each gives what is wrong ------------------------------------------------------------


def wrong_lines(path: Path) -> list[str]:
    raw = path.read_bytes()
    found = []
    if not raw.endswith(b"\r\n") or raw.count(b"\r") != raw.count(b"\r\n") or raw.count(b"\n") != raw.count(b"\r\n"):
        found.append("line ends")
    lines = raw.split(b"\r\n")
    if max(map(len, lines)) > 75:
        found.append("a line over 75 octets")
    for line in lines:
        line.decode("utf-8")  # A letter cut in two would not decode.
    return [f"{path.name}: {what}" for what in found]


def wrong_calendars(out: Path, data: dict) -> list[str]:
    found: list[str] = []
    folder = out / "calendars"
    for path in sorted(folder.iterdir()):
        found += wrong_lines(path)
        uids = [str(e["UID"]) for e in events(path)]
        if len(set(uids)) != len(uids):
            found.append(f"{path.name}: a UID stands twice")
    everything = events(folder / "all.ics")
    feast = data["feast"]
    extra = 2 + (feast["rain_date"] is not None)
    extra += sum(len(data[key]) for key in ("breaks", "gaps", "decisions"))
    if len(everything) != len(data["steps"]) + extra:
        found.append(f"all.ics: {len(everything)} events, {len(data['steps'])} steps and {extra} more")
    shown = Counter((str(e["SUMMARY"]), *when(e)) for e in everything)
    missing = planned(data) - shown
    found += [f"all.ics lacks {entry}" for entry in missing]
    days = Counter((*when(e)[:2],) for e in everything)
    for key in ("breaks", "gaps"):
        found += [f"all.ics lacks {span}" for span in data[key] if not days[span["from"], span["to"]]]
    by = Counter((str(e.get("DESCRIPTION")), when(e)[0]) for e in everything)
    found += [f"all.ics lacks {d}" for d in data["decisions"] if not by[d["what"], d["by"]]]
    known = {str(e["UID"]): e.to_ical() for e in everything}
    for grade in data["grades"]:
        for cls in grade["classes"]:
            own = events(out / cls["calendar"])
            steps = planned(data, lambda s, name=cls["name"]: s["class"] == name)
            lessons = Counter((str(e["SUMMARY"]), *when(e)) for e in own)
            rest = lessons - steps
            if steps - lessons or sum(rest.values()) != 1:
                found.append(f"{cls['calendar']}: {steps - lessons} missing, {rest} beside")
            if [key[1] for key in rest] != [feast["day"]]:
                found.append(f"{cls['calendar']}: not the feast: {rest}")
            if any(known.get(str(e["UID"])) != e.to_ical() for e in own):
                found.append(f"{cls['calendar']}: other than in all.ics")
    return found


def wrong_data(out: Path, data: dict) -> list[str]:
    schema = json.loads((out / data["$schema"]).read_text())
    Draft202012Validator.check_schema(schema)
    checker = Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER)
    return [f"plan-data.json: {e.json_path}: {e.message}" for e in checker.iter_errors(data)]


def wrong_tables(out: Path, data: dict) -> list[str]:
    found = []
    names = {"families": "families", "adult": "an adult", "anyone": "whoever is there"}
    for name in ("steps", "plantings", "weeks"):
        path = out / "tables" / f"{name}.csv"
        raw = path.read_bytes()
        if not raw.startswith(b"\xef\xbb\xbf") or raw.count(b"\n") != raw.count(b"\r\n"):
            found.append(f"{name}.csv: byte order mark or line ends")
        rows = table(path)
        if len({len(row) for row in rows}) != 1:
            found.append(f"{name}.csv: rows of unlike length")
        found += [f"{name}.csv: {cell!r} is a formula" for row in rows for cell in row if cell.startswith(FORMULA)]
    plantings = data["plantings"]
    wanted = Counter(
        (
            s["from"], s["to"], s["at"] or "", s["class"] or names[s["hands"]],
            plantings[s["planting"]]["ingredient"], str(plantings[s["planting"]]["sowing"]),
            str(s["minutes"] if s["minutes"] is not None else ""),
            str(s["part"]["part"]) if s["part"] else "",
        )
        for s in data["steps"]
    )  # fmt: skip
    plain = [[cell.removeprefix("'") for cell in row] for row in table(out / "tables/steps.csv")]
    got = Counter(tuple(row[at] for at in (0, 1, 2, 3, 6, 7, 10, 11)) for row in plain[1:])
    if wanted != got:
        found.append(f"steps.csv: {wanted - got} missing, {got - wanted} too many")
    rows = table(out / "tables/weeks.csv")[1:]
    weeks = [
        [w["monday"], w["flats_used"], w["flats_there"], w["mat_flats_used"], w["mat_flats_there"]]
        + [n for bed in w["beds"] for n in (bed["strips_used"], bed["strips_there"])]
        for w in data["weeks"]
    ]
    if rows != [[str(cell) for cell in week] for week in weeks]:
        found.append("weeks.csv: other than the data")
    places = [(p["ingredient"], str(p["sowing"]), place["bed"], str(place["strips"]), p["in_bed_from"], p["in_bed_until"])
              for p in plantings for place in p["places"]]  # fmt: skip
    rows = [[cell.removeprefix("'") for cell in row] for row in table(out / "tables/plantings.csv")[1:]]
    if places != [(r[0], r[1], r[4], r[6], r[7], r[8]) for r in rows if r[4]]:
        found.append("plantings.csv: other than the data")
    return found


def wrong_workbook(out: Path) -> list[str]:
    """The workbook holds what the tables hold, as real days, times, numbers and texts."""
    book = openpyxl.load_workbook(out / "plan.xlsx")
    found = [] if book.sheetnames == ["Steps", "Plantings", "Weeks"] else ["plan.xlsx: other sheets"]
    for sheet in book.worksheets:
        rows = table(out / "tables" / f"{sheet.title.lower()}.csv")
        if sheet.freeze_panes != "A2" or sheet.max_row != len(rows):
            found.append(f"plan.xlsx, {sheet.title}: rows or frozen head")
        for cells, texts in zip(sheet.iter_rows(), rows, strict=False):
            for cell, text in zip(cells, texts, strict=False):
                if cell.data_type == "f" or shown(cell.value) != text.removeprefix("'"):
                    found.append(f"plan.xlsx, {sheet.title} {cell.coordinate}: {cell.value!r}, not {text!r}")
        days = [row[0].value for row in sheet.iter_rows(min_row=2) if sheet.title != "Plantings"]
        if not all(isinstance(day, datetime) for day in days):
            found.append(f"plan.xlsx, {sheet.title}: days that are no days")
    return found


def shown(value: object) -> str:
    match value:
        case None:
            return ""
        case datetime():
            return value.date().isoformat()
        case time():
            return value.strftime("%H:%M")
        case _:
            return str(value)


def wrong_names(out: Path) -> list[str]:
    found = []
    for path in out.rglob("*"):
        name = path.name.removeprefix(".")
        if not re.fullmatch(r"[\w.-]+", name) or name != name.lower() or name.endswith(".") or len(name.encode()) > 200:
            found.append(f"{path.name!r} is no name for every system")
    return found


def wrong(out: Path) -> list[str]:
    data = json.loads((out / "plan-data.json").read_text(encoding="utf-8"))
    problems = wrong_data(out, data)
    if problems:
        return problems
    problems = wrong_calendars(out, data) + wrong_tables(out, data) + wrong_names(out)
    if WITH_WORKBOOK:
        problems += wrong_workbook(out)
    for path in (p for p in out.rglob("*") if p.suffix in {".ics", ".csv", ".json"}):
        if UNSEEN.search(path.read_text(encoding="utf-8-sig")):
            problems.append(f"{path.name}: a control sign")
    return problems


# -- what a new plan does to an old calendar -------------------------------------------------------


def entries(out: Path) -> dict[str, Event]:
    """Events by what a reader would call the same: the title without the number of chances."""
    all_events = events(out / "calendars" / "all.ics")
    named = [(re.sub(r"(chance \d+) of \d+", r"\1", str(e["SUMMARY"])), e) for e in all_events]
    plain = [(name, e) for name, e in named if not name.startswith(("Someone must be", "Decide: "))]
    assert len(dict(plain)) == len(plain), "titles are told apart"
    return dict(plain)


def moved(folder: Path, change: Callable[[str], str]) -> tuple[int, int]:
    """Plans a scenario and then with a change, a day later: how many events there are in both,
    and how many of these moved. Each must keep its UID and count as newer."""
    project = folder / "garden.toml"
    old = entries(make(project))
    text = project.read_text()
    project.write_text(change(text))
    assert project.read_text() != text
    new = entries(make(project, 1_800_086_400))
    both = old.keys() & new.keys()
    for name in both:
        if str(old[name]["UID"]) != str(new[name]["UID"]):
            sys.exit(f"{name}: another UID in the new plan")
        if not (old[name]["SEQUENCE"] < new[name]["SEQUENCE"] and old[name].decoded("DTSTAMP") < new[name].decoded("DTSTAMP")):
            sys.exit(f"{name}: the new plan is no newer")
    imported = {str(e["UID"]) for e in [*old.values(), *new.values()]}
    if len(imported) != len(old.keys() | new.keys()):
        sys.exit("an import of the new plan doubles events")
    return len(both), sum(when(old[name]) != when(new[name]) for name in both)


# -- the check can fail ------------------------------------------------------------------------


def without_first_event(text: str) -> str:
    return re.sub(r"BEGIN:VEVENT\r\n.*?END:VEVENT\r\n", "", text, count=1, flags=re.S)


def with_uid_twice(text: str) -> str:
    first, second = re.findall(r"UID:\S+", text)[:2]
    return text.replace(second, first)


DAMAGE: list[tuple[str, Callable[[str], str]]] = [
    ("calendars/all.ics", without_first_event),
    ("calendars/class-3a.ics", without_first_event),
    ("calendars/all.ics", with_uid_twice),
    ("calendars/all.ics", lambda t: re.sub(r"DTSTART:(\d{7})(\d)", lambda m: f"DTSTART:{m[1]}{(int(m[2]) + 1) % 10}", t, count=1)),
    ("calendars/all.ics", lambda t: t.replace("\r\n ", "", 1)),
    ("calendars/all.ics", lambda t: t.replace("\r\n", "\n", 1)),
    ("calendars/all.ics", lambda t: t.replace("Sow", "Saw", 1)),
    ("calendars/class-3a.ics", lambda t: t.replace("Takes", "Take", 1)),
    ("tables/steps.csv", lambda t: t.replace("2027-05-25", "2027-05-26", 1)),
    ("tables/steps.csv", lambda t: t.replace('"Sow', '"=Sow', 1)),
    ("tables/weeks.csv", lambda t: t.replace(",12", ",11", 1)),
    ("plan-data.json", lambda t: t.replace('"kind": "sow"', '"kind": "mow"', 1)),
    ("plan-data.json", lambda t: t.replace('"portions": 260', '"portions": 260, "more": 1', 1)),
    ("plan-data.json", lambda t: t.replace("2027-10-06", "2027-10-66", 1)),
]  # fmt: skip


def damaged(out: Path) -> int:
    for name, change in DAMAGE:
        with tempfile.TemporaryDirectory() as folder:
            copy = Path(folder) / "out"
            shutil.copytree(out, copy)
            text = (copy / name).read_bytes().decode("utf-8")
            assert change(text) != text, f"nothing to damage in {name}"
            (copy / name).write_bytes(change(text).encode("utf-8"))
            try:
                noticed = bool(wrong(copy))
            except (AssertionError, ValueError):
                noticed = True
            if not noticed:
                sys.exit(f"{name} was damaged and nobody noticed: {DAMAGE.index((name, change))}")
    for cell, value in [("A2", "2027-03-05"), ("F2", "=1+1"), ("K2", 12)] if WITH_WORKBOOK else []:
        with tempfile.TemporaryDirectory() as folder:
            copy = Path(folder) / "out"
            shutil.copytree(out, copy)
            book = openpyxl.load_workbook(copy / "plan.xlsx")
            book["Steps"][cell] = value
            book.save(copy / "plan.xlsx")
            if not wrong_workbook(copy):
                sys.exit(f"the workbook was damaged in {cell} and nobody noticed")
    return len(DAMAGE) + (3 if WITH_WORKBOOK else 0)


def main() -> None:
    print(f"{'project':20} {'calendars':>9} {'events':>7} {'steps':>6} {'weeks':>6} {'workbook':>9}")
    with tempfile.TemporaryDirectory() as scratch:
        for name in [*SCENARIOS, "hostile"]:
            folder = Path(scratch) / name
            if name == "hostile":
                folder.mkdir()
                (folder / "garden.toml").write_text(HOSTILE, encoding="utf-8")
            else:
                shutil.copytree(Path("scenarios") / name, folder)
            out = make(folder / "garden.toml")
            if problems := wrong(out):
                sys.exit(f"{name}:\n" + "\n".join(problems))
            if outside := [p.name for p in folder.iterdir() if p.name not in {"out", "plan.json"} and "out" in p.name]:
                sys.exit(f"{name}: beside the folder: {outside}")
            data = json.loads((out / "plan-data.json").read_text())
            files = list((out / "calendars").iterdir())
            count = sum(len(events(path)) for path in files)
            book = "read" if WITH_WORKBOOK else "not built"
            print(f"{name:20} {len(files):9} {count:7} {len(data['steps']):6} {len(data['weeks']):6} {book:>9}")
            before = {p: p.read_bytes() for p in out.rglob("*") if p.is_file()}
            run(WITH_WORKBOOK or TUREEN, "handouts", folder / "garden.toml", "--out", out)
            if before != {p: p.read_bytes() for p in out.rglob("*") if p.is_file()}:
                sys.exit(f"{name}: other bytes on a second run")
        noticed = damaged(Path(scratch) / "soup-day/out")
        print(f"damaged on purpose and noticed: {noticed} of {noticed}")
        for what, change in [
            ("feast four days later", lambda t: t.replace("feast = 2027-10-08", "feast = 2027-10-12").replace("2027-10-06 ", "2027-10-11 ")),
            ("classes 2 on Wednesday", lambda t: t.replace('name = "2a", children = 20, day = "Tue"', 'name = "2a", children = 20, day = "Wed"').replace('day = "Thu", every = 1', 'day = "Fri", every = 1')),
        ]:  # fmt: skip
            folder = Path(scratch) / what.replace(" ", "-")
            shutil.copytree("scenarios/soup-day", folder)
            both, changed = moved(folder, change)
            print(f"{what}: {both} events in both plans keep their UID, {changed} of them moved")
            if not changed:
                sys.exit("nothing moved, so nothing was tried")


main()
