"""Kills `tureen note` 500 times while it writes, two writers at once: whatever was told as written is in the
diary, every other entry is there whole or not at all, and the next one is read."""

import os
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

TUREEN = os.environ["TUREEN"]
GARDEN = Path("tests/integration/cli/garden.toml")
KILLS = 500
# Entries of one line and of many disk blocks.
SIZES = [1, 40, 180]
DAY = "2026-04-02"


def note(folder: Path, words: str) -> subprocess.Popen[bytes]:
    """A writer at work."""
    command = [TUREEN, "note", "garden.toml", "words", words, "--on", DAY]
    return subprocess.Popen(command, cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def read_back(folder: Path) -> int:
    """How many entries the program reads."""
    done = subprocess.run(
        [TUREEN, "note", "garden.toml"], cwd=folder, capture_output=True, text=True, stdin=subprocess.DEVNULL
    )
    if done.returncode != 0:
        sys.exit(f"the diary cannot be read: {done.returncode}\n{done.stderr}")
    return len(re.findall(r"^ *\d+ +[A-Z][a-z]{2} \d", done.stdout, re.MULTILINE))


def main() -> None:
    dice = random.Random(7)
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        shutil.copy(GARDEN, folder / "garden.toml")
        # How long a whole run takes, so that kills fall within it.
        start = time.monotonic()
        if note(folder, "first").wait() != 0:
            sys.exit("a first entry cannot be written")
        whole = time.monotonic() - start
        kept, killed = ["first"], []
        for number in range(KILLS // 2):
            pair = []
            for writer in range(2):
                words = f"k{number}w{writer}" + "x" * dice.choice(SIZES) + "end"
                pair.append((words, note(folder, words)))
            time.sleep(dice.uniform(0, 3 * whole))
            for words, process in pair:
                process.send_signal(signal.SIGKILL)
                (kept if process.wait() == 0 else killed).append(words)
        if note(folder, "last").wait() != 0:
            sys.exit("no entry can be written after the kills")
        kept.append("last")
        diary = (folder / "diary.toml").read_text()
        whole_entries = set(re.findall(r'^words = "(.*)"$', diary, re.MULTILINE))
        lost = [words for words in kept if words not in whole_entries]
        came = [words for words in killed if words in whole_entries]
        read = read_back(folder)
    print(
        f"{KILLS} kills: {len(kept) - 2} writers had done, {len(killed)} were killed, {len(came)} of them after their "
        f"entry was whole; {len(lost)} lost; {read} of {len(whole_entries)} whole entries are read"
    )
    if lost or read != len(whole_entries):
        sys.exit(f"lost: {lost[:5]}")
    if len(killed) < KILLS // 5 or len(kept) < 10:
        sys.exit("the kills do not fall within the writing")


if __name__ == "__main__":
    main()
