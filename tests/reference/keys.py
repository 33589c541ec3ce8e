"""The schema of the project file, judged by an outside validator: it takes every scenario's file, and
what it refuses and takes of damaged files agrees with the program, key by key.
"""

import copy
import datetime
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import tomllib

import jsonschema

ROOT = pathlib.Path(__file__).parents[2]
FULL = ROOT / "tests/integration/project_errors/full.toml"


def plain(value):
    """The file as JSON has it: dates and times are texts."""
    if isinstance(value, dict):
        return {key: plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [plain(inner) for inner in value]
    if isinstance(value, (datetime.date, datetime.time)):
        return value.isoformat()
    return value


def read(path: pathlib.Path):
    """A project file; the reader of Python wants seconds, and tables on one line."""
    text = re.sub(r"= (\d\d:\d\d)(?=[ ,}\n])", r"= \1:00", path.read_text())
    return plain(tomllib.loads(text))


def written(value) -> str:
    """A value as TOML; what looks like a date or a time is one."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{json.dumps(k)} = {written(v)}" for k, v in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(written(v) for v in value) + "]"
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d\d-\d\d|\d\d:\d\d:\d\d", value):
        return value
    return json.dumps(value)


def ways(value, way=()):
    """Every place in the file."""
    if way:
        yield way
    inner = {}
    if isinstance(value, dict):
        inner = value
    elif isinstance(value, list):
        inner = dict(enumerate(value))
    for key, each in inner.items():
        yield from ways(each, (*way, key))


def damaged(file, way, change):
    """The file with one place changed; `change` gets what holds it, and its key."""
    other = copy.deepcopy(file)
    at = other
    for key in way[:-1]:
        at = at[key]
    change(at, way[-1])
    return other


def kinds(value):
    """Values of other kinds, and figures that no key takes."""
    others = [True, 7, 0.5, "some text", [], {}, 1e7, -1e7, "2027-05-05", ["x"]]
    return [other for other in others if type(other) is not type(value) or other in (1e7, -1e7)]


def main() -> None:
    tureen = os.environ["TUREEN"]
    made = subprocess.run([tureen, "keys", "--schema"], capture_output=True, text=True, check=True)
    schema = json.loads(made.stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    faults = []
    scenarios = sorted((ROOT / "scenarios").glob("*/garden.toml"))
    for path in [*scenarios, FULL]:
        faults += [f"{path}: {e.message}" for e in validator.iter_errors(read(path))]

    full = read(FULL)
    counts = {"taken by both": 0, "refused by both": 0, "refused by the reader alone": 0}
    with tempfile.TemporaryDirectory() as scratch:
        garden = pathlib.Path(scratch) / "garden.toml"
        days = (datetime.date(2014, 1, 1) + datetime.timedelta(n) for n in range(1096))
        weather = "date,tmin_c,tmax_c,rain_mm\n" + "".join(f"{d},5,15,1\n" for d in days)
        (garden.parent / "weather.csv").write_text(weather)

        def judge(name: str, file) -> None:
            garden.write_text("\n".join(f"{json.dumps(k)} = {written(v)}" for k, v in file.items()))
            check = subprocess.run([tureen, "check", str(garden)], capture_output=True, check=False)
            if check.returncode not in (0, 3):
                sys.exit(f"{name}: exit {check.returncode}")
            ours, theirs = check.returncode == 0, validator.is_valid(file)
            if ours and theirs:
                counts["taken by both"] += 1
            elif not ours and not theirs:
                counts["refused by both"] += 1
            elif theirs:
                # What hangs together, or is found in the catalogue, no schema tells.
                counts["refused by the reader alone"] += 1
            else:
                faults.append(f"{name}: the schema refuses what the reader takes")

        judge("the full file", full)
        for way in ways(full):
            name = ".".join(map(str, way))
            value = full
            for key in way:
                value = value[key]
            for other in kinds(value):
                put = lambda at, key, other=other: at.__setitem__(key, other)
                judge(f"{name} = {other}", damaged(full, way, put))
            judge(f"without {name}", damaged(full, way, lambda at, key: at.pop(key)))
            if isinstance(value, dict):
                add = lambda at, key: at[key].__setitem__("surely_unknown", 1)
                judge(f"{name} with another key", damaged(full, way, add))

    # A schema that takes everything would pass all this: each kind of damage must be seen by it.
    for way, other in (
        (("project", "feast"), 7),
        (("bed", 0, "length_m"), 240),
        (("bed", 0, "sun"), "moon"),
        (("grade", 0, "id"), 2),
        (("grade", 0, "classes"), []),
        (("shelf", "flats"), 0.5),
        (("bed", 0, "length_ft"), 12),  # beside `length_m`
        (("bed", 0, "length_yd"), 4),
        (("crop", "dry bean", "usable"), 80),
    ):
        put = lambda at, key, other=other: at.__setitem__(key, other)
        if validator.is_valid(damaged(full, way, put)):
            faults.append(f"the schema takes {way} = {other}")
    print(f"{len(scenarios)} scenarios and the full file are taken;", counts)
    if counts["refused by both"] < 500:
        faults.append("too little was refused to mean anything")
    if faults:
        sys.exit("\n".join(faults))


if __name__ == "__main__":
    main()
