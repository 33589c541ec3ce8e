#!/usr/bin/env bash
# The checks against outside libraries, records and solvers, and in a real browser. Each is a
# script in this folder, in Python or JavaScript; all of them share one scratch folder with pinned packages.
#   tests/reference/run.sh                       all checks
#   tests/reference/run.sh formulas              one of them
#   tests/reference/run.sh browser --self-test   what begins with a dash, and all after it, goes to the script
# SCRATCH names a folder to keep and use again; without it, a new one is made and removed.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
exec < /dev/null

all=(licences formulas keys weather station generator packet_days saves diary backtest solvers handouts browser)
checks=()
while [[ $# -gt 0 && $1 != -* ]]; do
    checks+=("$1")
    shift
done
[[ ${#checks[@]} -gt 0 ]] || checks=("${all[@]}")

if [[ -z "${SCRATCH:-}" ]]; then
    SCRATCH=$(mktemp -d)
    trap 'rm -rf "$SCRATCH"' EXIT
fi
export SCRATCH
if [[ ! -e "$SCRATCH/ready" ]]; then
    python3 -m venv "$SCRATCH/venv"
    "$SCRATCH/venv/bin/pip" install --quiet --disable-pip-version-check \
        --requirement tests/reference/requirements.txt
    (cd "$SCRATCH" && npm pack --silent vega-datasets@3.2.1 > vega.log && tar -xzf vega-datasets-3.2.1.tgz)
    mkdir -p "$SCRATCH/stations"
    "$SCRATCH/venv/bin/python" tests/reference/stations.py "$SCRATCH/stations" "$SCRATCH/package"
    touch "$SCRATCH/ready"
fi

# The workbook is an option of the build. The check that reads it takes a second program.
if [[ " ${checks[*]} " == *" handouts "* ]]; then
    cargo build --quiet --release --locked --features spreadsheet
    cp "${CARGO_TARGET_DIR:-target}/release/tureen" "$SCRATCH/tureen-with-workbook"
    export TUREEN_WORKBOOK="$SCRATCH/tureen-with-workbook"
fi

# What the scripts in JavaScript need, when the first of them runs.
npm_packages() {
    [[ ! -e "$SCRATCH/npm/ready" ]] || return 0
    mkdir -p "$SCRATCH/npm"
    grep --invert-match '^#' tests/reference/npm_packages.txt | xargs npm install --silent --prefix "$SCRATCH/npm" \
        --no-save --no-package-lock --no-audit --no-fund --ignore-scripts --omit=optional
    touch "$SCRATCH/npm/ready"
}

cargo build --quiet --release --locked
TUREEN="$(cd "${CARGO_TARGET_DIR:-target}" && pwd)/release/tureen"
export TUREEN

for name in "${checks[@]}"; do
    printf '\n-- %s (after %d s)\n' "$name" "$SECONDS"
    if [[ -e "tests/reference/$name.mjs" ]]; then
        npm_packages
        node "tests/reference/$name.mjs" "$@"
    else
        "$SCRATCH/venv/bin/python" "tests/reference/$name.py" "$@"
    fi
done
