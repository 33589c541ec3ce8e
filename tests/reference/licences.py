"""The licences of everything that the program is built from, on any system.

Refuses what no accepted licence covers, and holds THIRD-PARTY.md to what the lock file says;
`--write` writes that list anew.
"""

import json
import os
import pathlib
import re
import subprocess
import sys
from typing import Any

LIST = pathlib.Path("THIRD-PARTY.md")

# All let a program be used and given away by anybody, and ask at most that their notice stays.
ACCEPTED = {
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "ISC",
    "MIT",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
}

HEAD = """# Third-party packages

What the default build of tureen is made of, on any system, with the licence that each package
states and where it stands; tools that only build or test it are not in the program and not here, but
those that write code into it are. Written by `tests/reference/run.sh licences --write`.

| package | version | licence | where it stands |
| --- | --- | --- | --- |
"""

Package = dict[str, Any]


def packages() -> list[Package]:
    """All packages of the default build, sorted by name and version; tureen itself left out."""
    command = ["cargo", "metadata", "--locked", "--format-version", "1"]
    metadata = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
    nodes = {node["id"]: node for node in metadata["resolve"]["nodes"]}
    root = metadata["resolve"]["root"]
    seen, ahead = {root}, [root]
    while ahead:
        for need in nodes[ahead.pop()]["deps"]:
            built = any(kind["kind"] in (None, "build") for kind in need["dep_kinds"])
            if built and need["pkg"] not in seen:
                seen.add(need["pkg"])
                ahead.append(need["pkg"])
    found = [package for package in metadata["packages"] if package["id"] in seen - {root}]
    return sorted(found, key=lambda package: (package["name"], package["version"]))


def is_accepted(expression: str | None) -> bool:
    """Whether accepted licences are enough for an SPDX expression (older ones write `/` for OR)."""
    words = re.findall(r"[()]|[^\s()]+", (expression or "").replace("/", " OR "))
    # An exception belongs to the licence before it.
    while "WITH" in words:
        at = words.index("WITH")
        words[at - 1 : at + 2] = [" ".join(words[at - 1 : at + 2])]
    alternatives = alternative(words)
    return bool(expression) and not words and alternatives


def alternative(words: list[str]) -> bool:
    """Takes `a OR b ...` from the front of the words."""
    met = union(words)
    while words and words[0] == "OR":
        words.pop(0)
        met = union(words) or met
    return met


def union(words: list[str]) -> bool:
    """Takes `a AND b ...` from the front of the words; AND binds closer than OR."""
    met = one(words)
    while words and words[0] == "AND":
        words.pop(0)
        met = one(words) and met
    return met


def one(words: list[str]) -> bool:
    """Takes one licence, or what stands in brackets."""
    if not words:
        return False
    word = words.pop(0)
    if word != "(":
        return word in ACCEPTED
    met = alternative(words)
    return bool(words) and words.pop(0) == ")" and met


def text(found: list[Package]) -> str:
    """The list as it is committed."""
    lines = []
    for package in found:
        folder = pathlib.Path(package["manifest_path"]).parent
        names = sorted(os.listdir(folder), key=str.lower)
        files = [n for n in names if n.lower().startswith(("licen", "copying", "unlicense", "notice"))]
        stands = ", ".join([*files, f"<{package['repository']}>"])
        lines.append(f"| {package['name']} | {package['version']} | {package['license']} | {stands} |\n")
    return HEAD + "".join(lines)


def own_test() -> None:
    """The reader of expressions, on what must pass and what must not."""
    good = ["MIT", "MIT/Apache-2.0", "GPL-3.0-only OR MIT", "(MIT OR GPL-3.0-only) AND Unicode-3.0"]
    good += ["Apache-2.0 WITH LLVM-exception OR GPL-3.0-only", "GPL-3.0-only AND ISC OR Zlib"]
    bad = [None, "", "GPL-3.0-only", "MIT AND GPL-3.0-only", "MIT WITH Some-exception", "(MIT", "MIT ISC"]
    bad += ["MIT AND (GPL-3.0-only OR LGPL-2.1-or-later)", "OR"]
    for expression in good + bad:
        assert is_accepted(expression) == (expression in good), expression


def main() -> int:
    """Checks, or writes the list."""
    own_test()
    found = packages()
    refused = [p for p in found if not is_accepted(p["license"])]
    for package in refused:
        print(f"refused: {package['name']} {package['version']}: {package['license']}")
    now = text(found)
    if "--write" in sys.argv:
        LIST.write_text(now, encoding="utf-8")
    is_true = LIST.exists() and LIST.read_text(encoding="utf-8") == now
    if not is_true:
        print(f"{LIST} is not what is built: tests/reference/run.sh licences --write")
    print(f"{len(found)} packages, {len(refused)} with a licence that is not accepted")
    return 1 if refused or not is_true else 0


if __name__ == "__main__":
    sys.exit(main())
