"""Kills the program at every system call of a save, and makes every one of them fail, with strace:
the old file or folder is there whole or the new one, a person's files stay, and the next run clears
what is left and says so."""

import os
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

TUREEN = os.environ["TUREEN"]
GARDEN = Path("tests/integration/cli/garden.toml")
ERRORS = ["ENOSPC", "EACCES", "EIO"]
# All that a save can ask of the system about files, as strace groups it.
CALLS = "%file,%desc"
# Calls that hold nothing of a save: they cannot lose anything, and failing they are another's matter.
NOT_OURS = {"mmap", "mprotect", "munmap", "poll", "ppoll", "readlink", "execve", "access", "ioctl", "fcntl"}
LINE = re.compile(r"^(?:\d+ +)?([a-z0-9_]+)\(")
BESIDE = re.compile(r"\.[A-Za-z0-9]{16}\.(unfinished|old)$")
# What each file or link holds, by its path; folders hold nothing.
Tree = dict[str, bytes]


@dataclass(frozen=True)
class Save:
    """A command that saves, in a folder that is laid out before."""

    name: str
    command: list[str]
    # What is saved, and what the program kept of a person's beside it.
    target: str
    kept: str | None
    layout: Callable[[Path], None]


def run(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([TUREEN, *arguments], cwd=folder, capture_output=True, text=True)


def must(folder: Path, *arguments: str) -> str:
    done = run(folder, *arguments)
    if done.returncode != 0:
        sys.exit(f"{arguments} ended with {done.returncode}:\n{done.stderr}")
    return done.stdout


def tree(path: Path) -> Tree | None:
    """What is at a path and below; nothing there is None."""
    if path.is_symlink():
        return {"": os.readlink(path).encode()}
    if path.is_file():
        return {"": path.read_bytes()}
    if not path.is_dir():
        return None
    found = {}
    for below in sorted(path.rglob("*")):
        if below.is_symlink():
            found[str(below.relative_to(path))] = os.readlink(below).encode()
        elif below.is_file():
            found[str(below.relative_to(path))] = below.read_bytes()
    return found


# -- what is saved ------------------------------------------------------------------------------


def garden(folder: Path) -> None:
    shutil.copy(GARDEN, folder / "garden.toml")
    (folder / "own.txt").write_text("a teacher's own")


def on_a_record(folder: Path) -> None:
    """The same garden on a record of four years: too few to promise anything on others, so that planning it some
    thousand times is quick."""
    garden(folder)
    must(folder, "weather", "garden.toml", "--out", "made.csv", "--years", "4")
    made = (folder / "made.csv").read_text().splitlines(keepends=True)
    (folder / "record.csv").write_text("".join(line for line in made if not line.startswith("#")))
    (folder / "made.csv").unlink()
    text = (folder / "garden.toml").read_text()
    on_record = re.sub(r"(?s)\n\[place\.monthly\]\n.*?\n(?=\n\[)", 'weather = "record.csv"\n', text, count=1)
    if on_record == text:
        sys.exit("the garden has no monthly means any more")
    (folder / "garden.toml").write_text(on_record)


def old_table(folder: Path) -> None:
    garden(folder)
    must(folder, "weather", "garden.toml", "--out", "w.csv", "--seed", "5", "--years", "1")


def edited_table(folder: Path) -> None:
    old_table(folder)
    with (folder / "w.csv").open("a") as file:
        file.write("# mine\n")


def old_plan(folder: Path) -> None:
    on_a_record(folder)
    must(folder, "plan", "garden.toml", "--out", "plans")
    # Another plan as the program writes it: one of another project.
    text = (folder / "garden.toml").read_text()
    (folder / "other.toml").write_text(re.sub(r'(?m)^name = "', 'name = "Other ', text, count=1))
    must(folder, "plan", "other.toml", "--out", "plans")


def edited_plan(folder: Path) -> None:
    old_plan(folder)
    path = folder / "plans" / "plan.json"
    path.write_text(path.read_text().replace('"Other ', '"My ', 1))


def planned(folder: Path) -> None:
    on_a_record(folder)
    must(folder, "plan", "garden.toml", "--out", ".")
    os.utime(folder / "plan.json", (1_800_000_000, 1_800_000_000))


def old_handouts(folder: Path) -> None:
    planned(folder)
    must(folder, "handouts", "garden.toml", "--out", "out")
    out = folder / "out"
    (out / "photos").mkdir()
    (out / "photos" / "bean.txt").write_text("my bean")
    (out / "tables" / "own.csv").write_text("my table")
    (out / "link").symlink_to("nowhere")
    with (out / "plan.html").open("a") as file:
        file.write("mine")
    # A newer plan: the calendars change.
    os.utime(folder / "plan.json", (1_810_000_000, 1_810_000_000))


TABLE = ["weather", "garden.toml", "--out", "w.csv", "--years", "1"]
PLAN = ["plan", "garden.toml", "--out", "plans"]
HANDOUTS = ["handouts", "garden.toml", "--out", "out"]
SAVES = [
    Save("a first table", TABLE, "w.csv", None, garden),
    Save("a table over an old one", TABLE, "w.csv", None, old_table),
    Save("a table over an edited one", TABLE, "w.csv", "w.edited.csv", edited_table),
    Save("a first plan", PLAN, "plans/plan.json", None, on_a_record),
    Save("a plan over an old one", PLAN, "plans/plan.json", None, old_plan),
    Save("a plan over an edited one", PLAN, "plans/plan.json", "plans/plan.edited.json", edited_plan),
    Save("first handouts", HANDOUTS, "out", None, planned),
    Save("handouts over old ones", HANDOUTS, "out", None, old_handouts),
]


# -- faults -------------------------------------------------------------------------------------


def strace(folder: Path, log: Path, inject: list[str], command: list[str]) -> subprocess.CompletedProcess[str]:
    words = ["strace", "--follow-forks", "-o", str(log), "-e", f"trace={CALLS}"]
    faults = [word for fault in inject for word in ("-e", f"inject={fault}")]
    return subprocess.run([*words, *faults, TUREEN, *command], cwd=folder, capture_output=True, text=True)


def points(folder: Path, save: Save, log: Path) -> Iterator[tuple[str, int]]:
    """The calls of the main thread from the first that names what is saved: name and which of its name."""
    done = strace(folder, log, [], save.command)
    if done.returncode != 0:
        sys.exit(f"{save.name}: strace must be able to trace here:\n{done.stderr}")
    first, begun, count = None, False, Counter[str]()
    for line in log.read_text().splitlines():
        thread = line.split()[0]
        first = first or thread
        call = LINE.match(line)
        if thread != first or not call or "resumed>" in line:
            continue
        count[call[1]] += 1
        begun = begun or f'"{Path(save.target).parts[0]}' in line and "execve" not in line
        if begun and call[1] not in NOT_OURS:
            yield call[1], count[call[1]]


def faults(call: str) -> list[str]:
    """What is done to a call. Where `close` fails on a folder that was read, Rust's library itself
    ends the program; by then nothing is to be lost."""
    return ["KILL"] if call == "close" else ["KILL", *ERRORS]


def rests(folder: Path, save: Save) -> list[Path]:
    """What a run left beside its place."""
    around = (folder / save.target).parent
    return [path for path in around.iterdir() if BESIDE.search(path.name)] if around.is_dir() else []


def fault(save: Save, before: Path, new: Tree, answer: str, call: str, which: int, what: str) -> list[str]:
    """One fault, and all that is wrong after it and after the next run."""
    with tempfile.TemporaryDirectory() as scratch:
        folder, log = Path(scratch) / "folder", Path(scratch) / "log"
        shutil.copytree(before, folder, symlinks=True)
        killed = what == "KILL"
        kind = "signal=KILL" if killed else f"error={what}"
        done = strace(folder, log, [f"{call}:{kind}:when={which}"], save.command)
        traced = log.read_text()
        if ("killed by SIGKILL" if killed else "(INJECTED)") not in traced:
            return [f"the fault did not come: {traced[-300:]}"]
        wrong = []
        if not killed and done.returncode not in range(7):
            wrong.append(f"it ended with {done.returncode}: {done.stderr}")
        old, now = tree(before / save.target), tree(folder / save.target)
        left = rests(folder, save)
        away = [path for path in left if path.name.endswith(".old") and tree(path) == old]
        if now not in (old, new) and not (killed and now is None and away):
            wrong.append(f"neither old nor new: {sorted(now or [])}")
        if not killed and done.returncode == 0 and now != new:
            wrong.append("it said that all is well, and nothing is new")
        if save.command[0] == "plan" and done.returncode == 1 and done.stdout and not done.stdout.startswith(answer):
            wrong.append("it had a plan and did not print it")
        wrong += a_persons(save, before, folder)
        again = run(folder, *save.command)
        if again.returncode != 0:
            wrong.append(f"the next run ended with {again.returncode}: {again.stderr}")
        if tree(folder / save.target) != new:
            wrong.append("the next run did not write it")
        if rests(folder, save):
            wrong.append(f"the next run left {rests(folder, save)}")
        if left and "broken off" not in again.stdout:
            wrong.append(f"the next run did not tell of {left}")
        return wrong + a_persons(save, before, folder)


def a_persons(save: Save, before: Path, folder: Path) -> list[str]:
    """What is lost of a person's files beside the target, and of an edited target."""
    wrong = []
    if (folder / "own.txt").read_text() != "a teacher's own":
        wrong.append("a person's file was touched")
    if save.kept:
        edited = (before / save.target).read_bytes()
        copies = [path for path in (folder / save.target, folder / save.kept) if path.is_file()]
        if edited not in [path.read_bytes() for path in copies]:
            wrong.append("what a person edited is lost")
        if (folder / save.kept.replace(".edited", ".edited-2")).exists():
            wrong.append("it was kept twice")
    return wrong


def check(save: Save, scratch: Path) -> tuple[Counter[str], list[str]]:
    """All faults of one save."""
    before, clean = scratch / "before", scratch / "clean"
    before.mkdir()
    save.layout(before)
    shutil.copytree(before, clean, symlinks=True)
    traced = scratch / "traced"
    shutil.copytree(before, traced, symlinks=True)
    answer = must(clean, *save.command).split("\nSaved: ")[0]
    new = tree(clean / save.target)
    if new is None or new == tree(before / save.target):
        return Counter(), ["the command must change something"]
    found = list(points(traced, save, scratch / "log"))
    jobs = [((call, which), what) for call, which in found for what in faults(call)]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        results = pool.map(lambda job: fault(save, before, new, answer, *job[0], job[1]), jobs)
        wrong = [
            f"{call} {which}, {what}: {words}"
            for ((call, which), what), all_words in zip(jobs, results)
            for words in all_words
        ]
    return Counter(calls=len(found), faults=len(jobs)), wrong


def with_strace() -> None:
    """Installs strace where that is possible."""
    if shutil.which("strace"):
        return
    if os.getuid() != 0 or not shutil.which("apt-get"):
        sys.exit('This check needs strace: install the package "strace" of this system.')
    apt = ["apt-get", "-qq", "-o", "DPkg::Lock::Timeout=300"]
    for words in (["update"], ["install", "--yes", "--no-install-recommends", "strace"]):
        subprocess.run([*apt, *words], check=True, stdout=subprocess.DEVNULL)


def main() -> None:
    with_strace()
    # --only NAME, as often as wanted
    wanted = [word for word in sys.argv[1:] if word != "--only"]
    if unknown := set(wanted) - {save.name for save in SAVES}:
        sys.exit(f"no save is named {sorted(unknown)}; there are {[save.name for save in SAVES]}")
    total, wrong = Counter[str](), []
    for save in SAVES:
        if wanted and save.name not in wanted:
            continue
        with tempfile.TemporaryDirectory() as scratch:
            count, found = check(save, Path(scratch))
        total += count
        wrong += [f"{save.name}: {words}" for words in found]
        print(f"{save.name}: {count['calls']} calls, {count['faults']} faults, {len(found)} wrong", flush=True)
    print(f"{total['faults']} kills and errors at {total['calls']} system calls")
    if wrong:
        sys.exit("\n".join(wrong[:40]))
    if not wanted and total["faults"] < 1000:
        sys.exit("there must be more to a save than that")


if __name__ == "__main__":
    main()
