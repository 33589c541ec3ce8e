"""The program of every aim of all scenarios and of 100 random gardens, solved by three outside
solvers and compared with what we found; then a table of the seconds that everybody took.

HiGHS and SCIP get the files as they are. CP-SAT knows whole numbers only: its columns of parts
go in steps of 1e-7, rows with parts are multiplied by 1e9, and each row gives way by what that
rounds off. A value agrees if it is ours to 1e-5 where ours is proved, else between our value
and our bound. Where HiGHS with its presolve calls a program infeasible, it is asked again without:
1.16.0 has been seen to err there. How often it takes back its word is told and limited."""

import csv
import multiprocessing
import os
import pathlib
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, field

import highspy
from ortools.sat.python import cp_model
from pyscipopt import Model

ROOT = pathlib.Path(__file__).resolve().parents[2]
TOLERANCE = 1e-5
# For a solve; little where we have no proof ourselves, for then others mostly have none either.
SECONDS = 20.0
SECONDS_UNPROVED = 2.0
# So many solves of proved programs may run out of time, so often HiGHS may take back its word.
MOST_LATE = 0.01
MOST_TAKEN_BACK = 0.01
STEP = 1e-7
SCALE = 1e9


@dataclass
class Ours:
    """What stands at the head of a file."""

    value: float
    bound: float
    proved: bool
    maximise: bool

    def agrees(self, value: float) -> bool:
        slack = TOLERANCE * max(1.0, abs(self.value))
        low, high = sorted((self.value, self.bound))
        return low - slack <= value <= high + slack

    def is_beaten_by(self, value: float) -> bool:
        """True if a point is better than we hold to be possible."""
        better = value - self.bound if self.maximise else self.bound - value
        return better > TOLERANCE * max(1.0, abs(self.bound))


@dataclass
class Word:
    """What a solver says: "optimal", "infeasible", "late" or another word; its best value."""

    status: str
    value: float | None
    seconds: float


@dataclass
class Solved:
    """One file and what all say about it."""

    garden: str
    aim: str
    ours: Ours
    words: dict[str, Word] = field(default_factory=dict)
    taken_back: bool = False


def read_head(path: pathlib.Path) -> Ours:
    head: dict[str, str] = {}
    with path.open() as file:
        for line in file:
            if line.startswith("OBJSENSE"):
                maximise = next(file).split() == ["MAX"]
                break
            words, _, figure = line[2:].strip().rpartition(": ")
            head.setdefault(words, figure)
    bound = head.get("Possible, at most") or head["Possible, at least"]
    return Ours(float(head["Value found"]), float(bound), head["Proved best"] == "yes", maximise)


def highs(path: pathlib.Path, presolve: str, limit: float) -> tuple[Word, highspy.HighsLp]:
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("time_limit", limit)
    solver.setOptionValue("presolve", presolve)
    if solver.readModel(str(path)) != highspy.HighsStatus.kOk:
        sys.exit(f"HiGHS cannot read {path}")
    begun = time.process_time()
    solver.run()
    seconds = time.process_time() - begun
    words = {
        highspy.HighsModelStatus.kOptimal: "optimal",
        highspy.HighsModelStatus.kInfeasible: "infeasible",
        highspy.HighsModelStatus.kTimeLimit: "late",
    }
    status = words.get(solver.getModelStatus(), str(solver.getModelStatus()))
    info = solver.getInfo()
    has_point = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    value = info.objective_function_value if has_point else None
    return Word(status, value, seconds), solver.getLp()


def scip(path: pathlib.Path, limit: float) -> Word:
    solver = Model()
    solver.hideOutput()
    solver.setParam("limits/time", limit)
    solver.readProblem(str(path))
    begun = time.process_time()
    solver.optimize()
    seconds = time.process_time() - begun
    status = {"timelimit": "late"}.get(solver.getStatus(), solver.getStatus())
    return Word(status, solver.getObjVal() if solver.getNSols() else None, seconds)


def cp_sat(lp: highspy.HighsLp, limit: float) -> Word:
    """Solves what HiGHS has read, in whole numbers."""
    model = cp_model.CpModel()
    whole = [kind == highspy.HighsVarType.kInteger for kind in lp.integrality_]
    unit = [1.0 if is_whole else STEP for is_whole in whole]
    columns = [
        model.new_int_var(round(low / step), round(high / step), name)
        for low, high, step, name in zip(lp.col_lower_, lp.col_upper_, unit, lp.col_names_)
    ]
    rows: list[list[tuple[int, float]]] = [[] for _ in range(lp.num_row_)]
    matrix = lp.a_matrix_
    starts, entries, weights = list(matrix.start_), list(matrix.index_), list(matrix.value_)
    for column in range(lp.num_col_):
        for at in range(starts[column], starts[column + 1]):
            rows[entries[at]].append((column, weights[at]))
    for terms, right in zip(rows, lp.row_upper_):
        figures = [weight for _, weight in terms] + [right]
        plain = all(whole[column] for column, _ in terms) and all(f == round(f) for f in figures)
        scale = 1.0 if plain else SCALE
        gives_way = 0.0
        sums = []
        for column, weight in terms:
            wanted = weight * unit[column] * scale
            sums.append(round(wanted) * columns[column])
            reach = lp.col_upper_[column] / unit[column]
            gives_way += abs(wanted - round(wanted)) * reach
            gives_way += 0.0 if whole[column] else abs(wanted)
        model.add(sum(sums) <= int(right * scale // 1 + gives_way // 1 + (not plain)))
    costs = [(column, cost) for column, cost in enumerate(lp.col_cost_) if cost]
    aim = sum(cost * unit[column] * columns[column] for column, cost in costs)
    if lp.sense_ == highspy.ObjSense.kMaximize:
        model.maximize(aim)
    else:
        model.minimize(aim)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = limit
    begun = time.process_time()
    status = solver.solve(model)
    seconds = time.process_time() - begun
    words = {
        cp_model.OPTIMAL: "optimal",
        cp_model.INFEASIBLE: "infeasible",
        cp_model.FEASIBLE: "late",
        cp_model.UNKNOWN: "late",
    }
    has_point = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return Word(words[status], solver.objective_value if has_point else None, seconds)


def silence() -> None:
    """HiGHS greets on the output, whatever it is told."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)


def solve(path: pathlib.Path) -> Solved:
    solved = Solved(path.parent.name, path.stem, read_head(path))
    limit = SECONDS if solved.ours.proved else SECONDS_UNPROVED
    word, lp = highs(path, "choose", limit)
    if word.status == "infeasible":
        again, _ = highs(path, "off", limit)
        solved.taken_back = again.status == "optimal"
        word = Word(again.status, again.value, word.seconds + again.seconds)
    solved.words = {"HiGHS": word, "CP-SAT": cp_sat(lp, limit), "SCIP": scip(path, limit)}
    return solved


def fault(solved: Solved, word: Word) -> str | None:
    """What is wrong with a word about a program, if anything."""
    if word.status == "late":
        better = word.value is not None and solved.ours.is_beaten_by(word.value)
        return "a better point" if better else None
    if word.status != "optimal" or word.value is None:
        return word.status
    return None if solved.ours.agrees(word.value) else "another optimum"


def children_seconds() -> float:
    usage = resource.getrusage(resource.RUSAGE_CHILDREN)
    return usage.ru_utime + usage.ru_stime


def export(folder: pathlib.Path) -> tuple[dict[str, float], dict[str, float]]:
    """Writes all files; the seconds of our solves, and of our whole runs of scenarios."""
    test = ["cargo", "test", "--quiet", "--release", "--locked", "--", "--ignored", "--exact"]
    environment = os.environ | {"TUREEN_EXPORT": str(folder)}
    name = "programs::export::programs_are_written"
    subprocess.run([*test, name], cwd=ROOT, env=environment, check=True, stdout=subprocess.DEVNULL)
    with (folder / "solve.csv").open() as file:
        ours = {row["garden"]: float(row["seconds"]) for row in csv.DictReader(file)}
    whole = {}
    for scenario in sorted((ROOT / "scenarios").iterdir()):
        plan = [os.environ["TUREEN"], "plan", str(scenario / "garden.toml")]
        begun = children_seconds()
        subprocess.run(plan, stdout=subprocess.DEVNULL, check=False)
        whole[scenario.name] = children_seconds() - begun
        target = ["--write-program", str(folder / scenario.name)]
        subprocess.run([*plan, *target], stdout=subprocess.DEVNULL, check=False)
    return ours, whole


def table(results: list[Solved], ours: dict[str, float], whole: dict[str, float]) -> None:
    solvers = list(results[0].words)
    took: dict[str, list[float]] = {garden: [0.0] * len(solvers) for garden in ours}
    for solved in results:
        for at, word in enumerate(solved.words.values()):
            took[solved.garden][at] += word.seconds

    def line(name: str, run: str, mine: float, theirs: list[float]) -> None:
        # Times of a few milliseconds tell nothing; the system counts in such steps.
        ratio = (lambda t: f"{t / mine:5.1f} x") if mine >= 0.02 else (lambda t: "      -")
        ratios = "".join(f"{t:9.2f} s {ratio(t)}" for t in theirs)
        print(f"{name:28}{run:>9}{mine:9.2f} s{ratios}")

    print("\nSeconds of processor time, and multiples of our solve; all aims of a garden, one thread each.")
    print(f"{'':28}{'our run':>9}{'our solve':>11}" + "".join(f"{s:>19}" for s in solvers))
    for name, seconds in whole.items():
        line(name, f"{seconds:.2f} s", ours[name], took[name])
    for kind in ("tiny", "larger"):
        names = [name for name in ours if name.startswith(f"{kind}-")]
        for word, of in (("sum", sum), ("median", statistics.median)):
            theirs = [of(took[n][at] for n in names) for at in range(len(solvers))]
            line(f"{len(names)} {kind} gardens, {word}", "", of(ours[n] for n in names), theirs)


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        ours, whole = export(folder)
        files = sorted(folder.glob("*/*.mps"), key=lambda path: -path.stat().st_size)
        with multiprocessing.Pool(2, silence) as pool:
            results = pool.map(solve, files, chunksize=1)
    wrong = [
        f"{s.garden}, {s.aim}, {solver}: {what}: {word.value}; ours {s.ours.value}, bound {s.ours.bound}"
        for s in results
        for solver, word in s.words.items()
        if (what := fault(s, word))
    ]
    words = [(s.ours.proved, word) for s in results for word in s.words.values()]
    late = sum(is_proved and word.status == "late" for is_proved, word in words)
    open_too = sum(not is_proved and word.status == "late" for is_proved, word in words)
    taken_back = [f"{s.garden} {s.aim}" for s in results if s.taken_back]
    proved = [s for s in results if s.ours.proved]
    deviation = max(
        abs(word.value - s.ours.value)
        for s in proved
        for word in s.words.values()
        if word.status == "optimal" and word.value is not None
    )
    gardens = {s.garden for s in results}
    print(f"{len(results)} programs of {len(gardens)} gardens, {len(proved)} of them proved by us;")
    print(f"{len(words)} outside solves; {late} of proved programs not done in {SECONDS:.0f} s,")
    print(f"{open_too} of the others not in {SECONDS_UNPROVED:.0f} s;")
    print(f"greatest deviation from a proved value: {deviation:.1e}")
    print(f"taken back by HiGHS without presolve: {', '.join(taken_back) or 'nothing'}")
    silent = [name for name in ours if name not in gardens]
    print(f"gardens without a point in time, so without a program: {', '.join(silent) or 'none'}")
    table(results, ours, whole)
    if late > MOST_LATE * len(words):
        wrong.append(f"{late} solves of programs that we proved were not done in time")
    if len(taken_back) > MOST_TAKEN_BACK * len(results):
        wrong.append(f"HiGHS took back {len(taken_back)} words")
    at_random = len(gardens) - len(whole)
    if at_random < 100:
        wrong.append(f"only {at_random} random gardens have a program")
    if wrong:
        sys.exit("\n" + "\n".join(wrong))


if __name__ == "__main__":
    main()
