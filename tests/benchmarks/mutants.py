"""How many wrong lines the tests of the answers find: a sample of mutants, the score, and what survived.

    uv run --with cosmic-ray==8.7.0 python -m tests.benchmarks.mutants 60 [belt|joints|drive]

Works in a copy of the tree, so that nothing here is touched. A mutant is one changed operator, number, comparison or
branch; it dies when one of the tests of its group fails. Survivors are printed to be read and judged.
"""

import ast
import random
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LOGIC = "tests/logic/test_"
EDGES = f"{LOGIC}answer_edges.py"
GROUPS = {
    "belt": (
        ("belt_*", "tension*"),
        f"tests/second/test_belt.py {LOGIC}belt_answers.py {LOGIC}answers.py {EDGES}",
    ),
    "joints": (
        ("joint*", "reach"),
        f"tests/second/test_joints.py {LOGIC}joint_answers.py {LOGIC}reach_answers.py {EDGES}",
    ),
    "drive": (
        (
            *(
                "gearing",
                "first_speed",
                "push",
                "pair",
                "pairs",
                "stopping",
                "braking",
                "drag",
                "range",
                "riding",
            ),
            *("descents", "controller_card", "energy", "charging", "carrying", "joining", "wiring", "wheel"),
            *("pack_parts", "parts", "hold", "bench_motor", "compare", "run", "reading"),
        ),
        f"tests/second/test_drive.py tests/second/test_pack.py {LOGIC}answers.py {LOGIC}answers_packs.py"
        f" {LOGIC}braking_answers.py {LOGIC}numbers_answers.py {EDGES}",
    ),
}
"""Modules of `logic/answers`, and the tests that hold them."""

LEFT_OUT = (
    "core/ReplaceBinaryOperator_BitOr",  # float | None in a signature, two dictionaries laid together
    "core/ZeroIterationForLoop",
    "core/ExceptionReplacer",
    "core/RemoveDecorator",
)
"""Mutations of types and of what only Python sees: no number changes, or nothing runs at all."""

CONFIG = """[cosmic-ray]
module-path = {paths}
timeout = 180.0
excluded-modules = []
test-command = "{python} -m pytest -n 0 -x -q -p no:cacheprovider {tests}"
[cosmic-ray.distributor]
name = "local"
"""


def _samples(path: Path) -> set[int]:
    """Return the lines on which the answers of a module are given their samples in the register: no page reads them."""
    return {
        line
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        for given in getattr(node, "decorator_list", ())
        if ast.unparse(given).startswith("answer(")
        for line in range(given.lineno, given.end_lineno + 1)
    }


def main(count: int, group: str) -> None:
    """Run `count` mutants of a group and print the score."""
    from cosmic_ray.work_db import use_db  # noqa: PLC0415  (a guest: not among the project's own packages)
    from cosmic_ray.work_item import TestOutcome, WorkerOutcome, WorkResult  # noqa: PLC0415

    patterns, tests = GROUPS[group]
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy"
        shutil.copytree(ROOT, copy, ignore=shutil.ignore_patterns(".git", ".venv", "__pycache__", ".*_cache"))
        answers = copy / "logic" / "answers"
        paths = sorted(
            str(path.relative_to(copy)) for name in patterns for path in answers.glob(f"{name}.py")
        )
        (copy / "mutants.toml").write_text(CONFIG.format(paths=paths, python=sys.executable, tests=tests))
        session = str(copy / "mutants.sqlite")
        tool = [sys.executable, "-m", "cosmic_ray.cli"]
        subprocess.run([*tool, "init", "mutants.toml", session], cwd=copy, check=True)  # noqa: S603
        with use_db(session) as db:
            items = list(db.work_items)
            samples = {path: _samples(copy / path) for path in paths}
            fit = [
                item
                for item in items
                for changed in item.mutations
                if not changed.operator_name.startswith(LEFT_OUT)
                and changed.start_pos[0] not in samples[str(changed.module_path)]
            ]
            wanted = {item.job_id for item in random.Random(1).sample(fit, min(count, len(fit)))}
            for item in items:
                if item.job_id not in wanted:
                    db.set_result(item.job_id, WorkResult(worker_outcome=WorkerOutcome.SKIPPED))
        subprocess.run([*tool, "exec", "mutants.toml", session], cwd=copy, check=True)  # noqa: S603
        with use_db(session) as db:
            done = [(item, result) for item, result in db.completed_work_items if item.job_id in wanted]
    alive = [
        (item.mutations[0], result) for item, result in done if result.test_outcome == TestOutcome.SURVIVED
    ]
    for mutation, result in alive:
        print(f"{mutation.module_path}:{mutation.start_pos[0]} {mutation.operator_name}")
        lines = (result.diff or "").splitlines()
        print("\n".join(line for line in lines if line[:1] in "+-" and line[:3] not in ("+++", "---")))
    died = len(done) - len(alive)
    print(
        f"{group}: {died} of {len(done)} mutants died, {100 * died / len(done):.0f} %, of {len(fit)} there are"
    )


if __name__ == "__main__":
    main(int(sys.argv[1]), *(sys.argv[2:] or ("belt",)))
