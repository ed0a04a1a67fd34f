"""The house keeps its arrows: what imports what, what logic does without, and that every table says where it is from."""

import ast
import inspect
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from logic.board import board_fields
from logic.store import Store
from logic.tables import SI_OF_PRINTED, raw, rows, sources
from logic.units import quantities, registry
from logic.workings import KNOWN, STANDINGS

ROOT = Path(__file__).parents[2]
TABLES = sorted(path.stem for path in (ROOT / "assets" / "tables").glob("*.toml"))
WITH_ROWS = [table for table in TABLES if "row" in raw(table)]

GROUND = "si errors roots workings units tables"
SUBJECTS = "drive pack belt joints"
EVERYWHERE = "frozen tongue"
"""What says nothing of boards and may be used by all."""
ARROWS = {
    "frozen": "",
    "tongue": "",
    "si": "",
    "errors": "",
    "workings": "",
    "roots": "errors workings",
    "units": "errors",
    "step_units": "si units workings",
    "tables": "errors units workings",
    "drive": GROUND,
    "pack": GROUND,
    "belt": GROUND,
    "joints": GROUND,
    "fields": "errors",
    "board_joints": "errors fields",
    "board": "errors tables units fields board_joints",
    "board_saved": "errors fields board_joints board",
    "prints": "errors si tables",
    "keys": "units",
    "entries": "errors units fields board prints",
    "person": "errors board tables",
    "exchange": f"{GROUND} board board_saved fields log person store",
    "read_back": "errors board board_saved checks person store",
    "log": "errors fields",
    "store": "errors log",
    "history": "checks",
    "ledger": "errors board person log store tables units checks history",
    "log_table": "errors board person store tables units ledger",
    "checks": f"{GROUND} board person log store",
    "upkeep": f"{GROUND} board person store checks history",
    "set_ups": "board exchange tables",
    "checked": "tables",
    "licences": "tables",
    "glossary": "tables",
    "search": "",
    "answers": f"{GROUND} {SUBJECTS} fields board_joints board person log store checks upkeep ledger exchange",
    "screens": (
        "errors units step_units workings tables fields board_joints board board_saved person exchange log store history ledger"
        " log_table checks upkeep answers entries keys read_back glossary search set_ups checked licences"
    ),
    "main": "screens",
}
"""What each package may import of the house, beside itself. Formulas are reached through answers only."""


def package_of(name: str) -> str:
    """Return the package of the house a dotted name lies in, nothing for what is not ours."""
    head, _, rest = name.partition(".")
    if head == "logic":
        return rest.partition(".")[0]
    return head if head in ("screens", "main") else ""


def imports(path: Path) -> Iterator[str]:
    """Yield each module that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            assert node.module is not None
            if node.module in ("logic", "logic.answers"):
                yield from (f"{node.module}.{alias.name}" for alias in node.names)
            else:
                yield node.module


def modules() -> Iterator[tuple[Path, str]]:
    """Yield each file of the app with its package."""
    for path in sorted(
        [ROOT / "main.py", *(ROOT / "logic").rglob("*.py"), *(ROOT / "screens").rglob("*.py")]
    ):
        name = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        yield path, package_of(name.removesuffix(".__init__"))


def test_imports_follow_the_arrows() -> None:
    wrong = [
        f"{path.relative_to(ROOT)} imports {name}"
        for path, package in modules()
        for name in imports(path)
        if (target := package_of(name))
        and target != package
        and target not in f"{ARROWS.get(package, '')} {EVERYWHERE}".split()
    ]
    assert wrong == []


STORE_WRITES = {
    name
    for part in Store.__mro__
    if part.__module__.startswith("logic.store")
    for name, made in vars(part).items()
    if "_writing()" in (inspect.getsource(made) if inspect.isfunction(made) else "")
} - {"_writing"}


def test_pages_write_through_the_state_alone() -> None:
    """`State` and `update` write; the walks of the pictures may break off a run, which no page can."""
    assert {"append", "correct", "void", "put", "save_board", "finish_run"} <= STORE_WRITES
    wrong = [
        f"{path.relative_to(ROOT)}: {node.value.attr if isinstance(node.value, ast.Attribute) else 'store'}.{node.attr}"
        for path, package in modules()
        if package == "screens" and path.name != "state.py" and path.parent.name not in ("update", "scenes")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Attribute)
        and node.attr in STORE_WRITES
        and ast.unparse(node.value).rpartition(".")[2] == "store"
    ]
    assert wrong == []


def test_pages_neither_build_nor_read_entries_of_the_log_as_dictionaries() -> None:
    """`.body[...]` and `.body.get(...)` belong to runs of checklists, which are no entries."""
    wrong = [
        f"{path.relative_to(ROOT)}: {text}"
        for path, package in modules()
        if package in ("screens", "ledger", "log_table", "upkeep", "checks", "answers", "belt")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Subscript | ast.Attribute)
        for text in (ast.unparse(node),)
        if (".body[" in text and not text.startswith(("run.body", "saved.body"))) or ".body.get" in text
    ]
    assert wrong == []


def test_every_package_has_its_line() -> None:
    assert {package for _, package in modules() if package} <= set(ARROWS)


def test_no_module_of_kivymd_is_imported_only_its_icon_font_is_used() -> None:
    found = {
        str(path.relative_to(ROOT / "screens"))
        for path, package in modules()
        if package == "screens"
        for name in imports(path)
        if name.partition(".")[0] == "kivymd"
    }
    assert found == set()


def test_logic_needs_neither_kivy_nor_numpy_nor_pint_to_be_imported() -> None:
    script = (
        "import importlib, pkgutil, sys, logic\n"
        "for name in ('kivy', 'kivymd', 'numpy', 'scipy', 'screens'):\n"
        "    sys.modules[name] = None\n"
        "for module in pkgutil.walk_packages(logic.__path__, 'logic.'):\n"
        "    importlib.import_module(module.name)\n"
        "print(sorted(name for name in sys.modules if name.partition('.')[0] == 'pint'))\n"
    )
    run = subprocess.run(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (run.returncode, run.stdout, run.stderr) == (0, "[]\n", "")


@pytest.mark.parametrize("table", WITH_ROWS)
def test_every_row_has_a_listed_source_and_a_standing(table: str) -> None:
    assert rows(table)
    for number, row in enumerate(rows(table), start=1):
        assert row.source in sources(), f"{table}, row {number}"
        assert row.standing in STANDINGS, f"{table}, row {number}"
        assert row.where, f"{table}, row {number}: no place in the source"


@pytest.mark.parametrize("table", [table for table in TABLES if table not in WITH_ROWS])
def test_a_table_of_its_own_form_has_a_source_too(table: str) -> None:
    assert raw(table)["source"] in sources()
    assert raw(table)["standing"] in STANDINGS


@pytest.mark.parametrize("table", WITH_ROWS)
def test_printed_units_are_known_and_their_columns_exist(table: str) -> None:
    printed = raw(table).get("units", {})
    assert set(printed.values()) <= set(SI_OF_PRINTED)
    columns = {column for row in rows(table) for column in row.cells}
    assert set(printed) <= columns


@pytest.mark.parametrize(("printed", "si"), [pair for pair in SI_OF_PRINTED.items() if pair[0] != "degC"])
def test_a_printed_unit_is_of_the_dimension_it_becomes(printed: str, si: str) -> None:
    unit = registry()
    assert unit.Unit(printed).dimensionality == unit.Unit(si).dimensionality


def test_every_table_that_code_names_exists() -> None:
    named = {
        node.args[0].value
        for path, _ in modules()
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in ("pick", "rows", "raw", "matching")
        and node.args
        and isinstance(node.args[0], ast.Constant)
        and isinstance(node.args[0].value, str)
    }
    assert named
    assert named <= set(TABLES)


READERS = "\n".join(
    path.read_text("utf-8")
    for name in ("logic", "screens", "tests/published")
    for path in sorted((ROOT / name).rglob("*.py"))
    if path.name != "tongue.py"
)
"""Code that reads tables, and the tests that hold what is printed against its source; not the list of what is said."""


@pytest.mark.parametrize("table", TABLES)
def test_every_column_is_read_or_held_against_its_source(table: str) -> None:
    found = [row for part in raw(table).values() if isinstance(part, list) for row in part]
    columns = {column for row in found if isinstance(row, dict) for column in row}
    assert columns or not found
    unread = set()
    for column in columns - {"where", "source", "standing"}:
        # The ends of what is usual are read by the name of the middle and a suffix.
        middle = column.removesuffix("_low").removesuffix("_high")
        joined = f'"{middle}" + SUFFIX' in READERS or f'f"{middle}_{{' in READERS
        if not re.search(rf"\b{column}\b", READERS) and not (joined and middle != column):
            unread.add(column)
    assert unread == set()


@pytest.mark.parametrize("name", quantities())
def test_every_unit_of_a_quantity_is_known_and_of_its_dimension(name: str) -> None:
    quantity, unit = quantities()[name], registry()
    assert quantity.home("metric") in quantity.units
    assert quantity.home("inch") in quantity.units
    for one in quantity.units:
        assert unit.Unit(one.pint).dimensionality == unit.Unit(quantity.si).dimensionality, one.shown
        assert one.words or not one.shown


def test_every_board_field_has_words_a_known_quantity_and_limits() -> None:
    for field in board_fields().values():
        assert field.label, field.key
        assert field.help, field.key
        if field.kind == "choice":
            assert len({option.key for option in field.options}) == len(field.options) > 1, field.key
        else:
            assert field.quantity in quantities(), field.key
            assert field.low is not None, field.key
            assert field.high is not None, field.key
            assert field.low < field.high, field.key


def test_the_words_of_sureness_are_in_order() -> None:
    assert STANDINGS == ("published", "derived", "practice", "estimate")
    assert KNOWN == ("measured", "label", "guess", "assumed")


@pytest.mark.parametrize("table", WITH_ROWS)
def test_a_row_from_memory_is_an_estimate(table: str) -> None:
    """Unless it is a habit of the trade, which says so; and a habit is never called published."""
    for row in rows(table):
        if row.source == "memory" or "from memory" in row.where:
            assert row.standing in ("estimate", "practice"), row
            assert row.source != "memory" or row.standing == "estimate", row
        if row.source == "practice":
            assert row.standing in ("practice", "estimate"), row


def test_a_formula_that_a_manual_does_not_print_is_not_called_published() -> None:
    """The floor of the tension window takes the low end of a printed range: practice."""
    from logic.belt.tension import window_floor  # noqa: F401, PLC0415  (registers it)
    from logic.workings import REGISTER  # noqa: PLC0415

    assert REGISTER["logic.belt.tension.window_floor"].standing == "practice"
    own = ("derived", "practice", "memory")
    assert not [key for key, one in REGISTER.items() if one.source in own and one.standing == "published"]
