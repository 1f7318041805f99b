"""What a machine can hold of the house style."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

SOURCE = Path(__file__).parents[2] / "src" / "gaugerod"
ENGINE = ("basis", "geometry", "standards", "coverings", "rules", "setting_out", "laying", "substrate", "fixing",
          "edges", "take_off", "as_built", "job", "sheets")  # fmt: skip
FILES = sorted(path for folder in ENGINE if (SOURCE / folder).is_dir() for path in (SOURCE / folder).rglob("*.py"))
UNITS = ("_mm", "_m", "_m2", "_mm2", "_deg", "_kg", "_kg_m2", "_pa", "_ratio", "_count", "_n", "_ms", "_percent", "_pt",
         "_kn_m2", "_mm4", "_per_m2", "_m_per_m2", "_mm2_per_m")  # fmt: skip
UNITLESS_NAMES = {
    # their unit stands beside them in a field of the same record
    "proposed", "limit", "value", "number", "number_or_none", "at",
    "net", "order", "ordered", "bought", "amount", "pack_size", "size", "quantity",
    # ratios and parameters of plain geometry: where along a line, which way a vector points
    "rise", "run", "slope", "share", "t", "turn", "sign", "cross", "dot", "x", "y", "z", "dx", "dy", "a", "b", "c",
    "sine", "over", "miss",
}  # fmt: skip
IMPURE = {"random", "time", "datetime", "os", "sys", "socket", "sqlite3", "logging", "subprocess", "urllib", "secrets"}
READS_TABLES = ("standards", "coverings")


def name_of(path: Path) -> str:
    return str(path.relative_to(SOURCE))


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_every_float_names_its_unit(path: Path) -> None:
    assert [] == [
        f"{line}: {name}" for name, line in _floats(ast.parse(path.read_text("utf-8"))) if not _has_unit(name)
    ]


def _floats(tree: ast.AST) -> Iterator[tuple[str, int]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            for argument in (*node.args.args, *node.args.kwonlyargs):
                if _is_float(argument.annotation):
                    yield argument.arg, argument.lineno
            if _is_float(node.returns):
                yield node.name, node.lineno
        elif isinstance(node, ast.ClassDef):
            for line in node.body:
                if isinstance(line, ast.AnnAssign) and _is_float(line.annotation) and isinstance(line.target, ast.Name):
                    yield line.target.id, line.lineno


def _is_float(annotation: ast.expr | None) -> bool:
    if annotation is None:
        return False
    return ast.unparse(annotation) in {"float", "float | None", "tuple[float, ...]"}


def _has_unit(name: str) -> bool:
    bare = name.strip("_")
    return bare in UNITLESS_NAMES or bare.endswith(UNITS) or bare in {unit.strip("_") for unit in UNITS}


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_the_engine_is_pure(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    imported = {
        alias.name.partition(".")[0] for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names
    }
    imported |= {(node.module or "").partition(".")[0] for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    called = {node.func.id for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)}
    assert set() == imported & IMPURE
    assert set() == called & {"print", "open", "input"}
    if path.relative_to(SOURCE).parts[0] not in READS_TABLES:
        assert set() == imported & {"importlib", "pathlib"}


@pytest.mark.parametrize("path", sorted(SOURCE.rglob("*.py")), ids=name_of)
def test_files_and_functions_stay_small(path: Path) -> None:
    text = path.read_text("utf-8")
    assert text.count("\n") <= 400, "a room with too much in it"
    long = [
        f"{node.name}: {node.end_lineno - node.lineno}"
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.FunctionDef) and node.end_lineno is not None and node.end_lineno - node.lineno > 75
    ]
    assert [] == long


@pytest.mark.parametrize("path", sorted(SOURCE.rglob("*.py")), ids=name_of)
def test_everything_public_says_what_it_is(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    silent = [
        node.name
        for node in tree.body
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
        and not node.name.startswith("_")
        and not ast.get_docstring(node)
    ]
    assert ast.get_docstring(tree), "the file does not say what it is"
    assert [] == silent


def test_no_room_is_called_a_drawer() -> None:
    assert [] == [
        name_of(path) for path in SOURCE.rglob("*") if path.stem in {"utils", "helpers", "common", "misc", "manager"}
    ]
