"""Every rule and every notice is explained, and the worked examples are right."""

import ast
import fnmatch
import re
from collections import defaultdict
from fractions import Fraction
from math import ceil, floor, isqrt

import pytest

from patternbook.commands.explain import all_entries
from tests.support import PACKAGE, Run

ENTRIES = all_entries()
CODE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
RULES = [f"R{number}" for number in range(1, 25)]


def half(text: str) -> Fraction:
    """A number as it stands in a sentence: 6 1/2."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def up_to_eighths_over_root_2(block: int, more: Fraction) -> Fraction:
    """Block ÷ √2 + more, up to the next eighth, with whole numbers only."""
    eighths = isqrt(block * block * 32)
    return Fraction(eighths + (eighths * eighths != block * block * 32), 8) + more


# Rule, what the sum gives, how the entry prints it. The inputs are the sources' own.
WORKED = [
    # Seam test of three strips, http://www.quiltcentric.com/2012/09/16/testing-your-scant-quarter-inch-seam/
    ("R1", 3 * half("1 1/2") - 2 * half("1/2"), "3 1/2"),
    # The printed error, http://quilton.blogspot.com/2011/09/before-i-start-today.html
    ("R1", 11 + 9 - half("1/2"), "19 1/2"),
    # Guild lesson, http://north-hampshire-quilters.org.uk/hblk402b.htm
    ("R2", 3 + half("7/8"), "3 7/8"),
    # Table for blocks on point, http://www.pinemeadowsdesigns.com/SewingHints-BlockOnPoint.htm
    ("R2", up_to_eighths_over_root_2(12, half("7/8")), "9 3/8"),
    # A quilter's mistake, http://kristaquilts.blogspot.com/2015/12/math-fail.html
    ("R3", Fraction(120 * 2, 20), "12"),
    # Column on yardage, https://featheredstar.wordpress.com/category/faqs/
    ("R4", ceil(80 / floor(40 / half("2 1/2"))) * half("2 1/2"), "12 1/2"),
    ("R4", half("12 1/2") * Fraction(106, 100), "13 1/4"),
    ("R4", ceil(half("13 1/4") / half("4 1/2")) * half("4 1/2"), "13 1/2"),
    # Tutorial, http://www.modernquiltingbyb.com/2015/02/single-block-quilt-tutorial-series.html
    ("R5", Fraction(ceil(140 / Fraction(42 // half("4 1/2")))), "16"),
    ("R5", Fraction(ceil(140 / Fraction(40 // half("4 1/2")))), "18"),
    # Chart of squares from a fat quarter, http://www.quilterscache.com/M/MathChartsPage.html
    ("R6", Fraction((18 // half("6 1/2")) * (22 // half("6 1/2"))), "6"),
    ("R6", Fraction((18 * 22) // half("6 1/2") ** 2), "9"),
    # Guild lesson on borders, https://oldmvc.villageserver.com/4Bs_Oct.html
    ("R7", half("32 1/2") + 2 * (half("1 1/2") - half("1/2")), "34 1/2"),
    ("R7", half("34 1/2") + 2 * (half("2 1/2") - half("1/2")), "38 1/2"),
    # The slip, https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/
    ("R8", 4 * 9 + 5 * half("3 5/8"), "54 1/8"),
    ("R8", 5 * 9 + 6 * half("3 5/8"), "66 3/4"),
    # Table, http://quiltville.blogspot.com/2005/06/how-many-squares-in-yard.html
    ("R9", Fraction((45 // 8) * (36 // 8)), "20"),
    # Lesson 1, https://docslib.org/doc/4718373/lesson-1-allowing-for-seam-allowances
    ("R12", 3 + half("1/2"), "3 1/2"),
    # Article, https://www.radpatterns.com/why-that-1-measurement-square-is-so-important/
    ("R13", 40 * (1 - half("15/16")), "2 1/2"),
    # Tutorial, https://www.monicacurryquiltdesign.com/2019/06/how-to-make-double-fold-flange-quilt.html
    ("R14", Fraction(2 * 54 + 2 * 60 + 10), "238"),
    ("R14", Fraction(ceil(Fraction(238, 42))), "6"),
    # Forum, https://www.quiltingboard.com/7400852-post21.html
    ("R15", Fraction(2 * 65), "130"),
    ("R15", Fraction(2 * 78), "156"),
    # Table, https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/
    ("R17", half("2 1/2") * Fraction("2.54"), "6.35"),
    # Block list and its correction, https://patchworktimes.com/2011/11/11/block-pieces-needed/
    ("R20", Fraction(12 * 8), "96"),
    # The 42: common practice; a forum asks for as many of 5 in,
    # https://www.quiltingboard.com/main-f1/fat-quarter-conversion-t222332.html
    ("R21", Fraction(40 * 2), "80"),
    ("R21", Fraction(ceil(Fraction(80, 42))), "2"),
    # Chart, https://apqs.com/reference-chart-for-squares-on-point; the 14 in a magazine quilt,
    # https://issuu.com./freespiritfabrics/docs/kfc_august_2023_inspiration/s/28978552
    ("R22", Fraction(4 * 5 + 3 * 4), "32"),
    ("R22", Fraction(2 * (4 + 5 - 2)), "14"),
    # Chart, http://www.honeybegood.com/blogs/resources/12653533-common-quilt-and-batting-sizes
    ("R24", Fraction(88 + 6), "94"),
]


@pytest.mark.parametrize(("rule", "value", "printed"), WORKED)
def test_worked_examples_are_right(rule: str, value: Fraction, printed: str) -> None:
    assert value == half(printed)
    assert re.search(rf"(?<![\d/.]){re.escape(printed)}(?![\d/]|\.\d| \d/)", ENTRIES[rule])


def test_every_rule_has_an_example_and_a_source() -> None:
    assert set(RULES) <= set(ENTRIES)
    for rule in RULES:
        assert "\nExample: " in ENTRIES[rule], rule
        assert "\nSource: " in ENTRIES[rule], rule


def of_a_rule(tree: ast.Module) -> set[str]:
    """The codes that stand in one call with a rule."""
    found = set()
    for call in (node for node in ast.walk(tree) if isinstance(node, ast.Call)):
        given = [*call.args, *(word.value for word in call.keywords)]
        parts = [part for one in given for part in ast.walk(one)]
        words = {str(part.value) for part in parts if isinstance(part, ast.Constant)}
        if words & set(RULES):
            found |= words & ENTRIES.keys() - set(RULES)
    return found


def test_every_notice_of_a_rule_has_an_example() -> None:
    """In numbers (that it names a rule, as in `See R5`, is none), or in words where it is about
    words."""
    trees = [ast.parse(file.read_text("utf-8")) for file in PACKAGE.rglob("*.py")]
    codes = set().union(*map(of_a_rule, trees))
    assert {"row-length", "strips-short", "count"} <= codes
    without = {
        code
        for code in codes
        if not re.search(r"\d|Example: ", re.sub(r"\bR\d+", "", ENTRIES[code].partition("\n")[2]))
    }
    assert without == set()


def names_taken(node: ast.AST) -> list[str]:
    """What a function or a class (by its fields or its __init__) takes, in order."""
    if isinstance(node, ast.FunctionDef):
        return [one.arg for one in node.args.args if one.arg not in {"self", "cls"}]
    if isinstance(node, ast.ClassDef):
        for inner in node.body:
            if isinstance(inner, ast.FunctionDef) and inner.name == "__init__":
                return names_taken(inner)
        fields = [one.target for one in node.body if isinstance(one, ast.AnnAssign)]
        return [one.id for one in fields if isinstance(one, ast.Name)]
    return []


def takers(trees: list[ast.Module]) -> dict[str, set[int]]:
    """Whatever takes a notice's code, Notice first of all, and the places where it takes it."""
    nodes = [node for tree in trees for node in ast.walk(tree)]
    defined = [node for node in nodes if isinstance(node, ast.FunctionDef | ast.ClassDef)]
    found = defaultdict(set)
    for node in defined:
        names = [] if node.name == "__init__" else names_taken(node)
        if "code" in names:
            found[node.name].add(names.index("code"))
    for node in defined:
        for base in getattr(node, "bases", ()):
            found[node.name] |= found.get(getattr(base, "id", ""), set())
    return found


def codes_in(trees: list[ast.Module]) -> set[str]:
    """Every code that is written as a plain word where a code is taken."""
    places, names, found = takers(trees), constants(trees), set()
    for node in (node for tree in trees for node in ast.walk(tree)):
        name = getattr(node, "func", None)
        called = getattr(name, "id", "") or getattr(name, "attr", "")
        if isinstance(node, ast.Call) and places.get(called):
            given = [node.args[place] for place in places[called] if place < len(node.args)]
            given += [word.value for word in node.keywords if word.arg == "code"]
            words = {word for top in given for word in _choices(top, names)}
            found |= {word for word in words if CODE.fullmatch(word)}
    return found


def constants(trees: list[ast.Module]) -> dict[str, str]:
    """The plain words that a module gives a name in capitals."""
    found = {}
    for node in (node for tree in trees for node in tree.body):
        if isinstance(node, ast.AnnAssign) and isinstance(node.value, ast.Constant):
            found[ast.unparse(node.target)] = str(node.value.value)
    return {name: word for name, word in found.items() if name.isupper()}


def _choices(given: ast.expr, names: dict[str, str]) -> set[str]:
    """The words that an argument may be: "a", "a" if … else "b", A, or all that f"a-{…}" fits."""
    if isinstance(given, ast.IfExp):
        return _choices(given.body, names) | _choices(given.orelse, names)
    if isinstance(given, ast.JoinedStr):
        parts = (
            str(part.value) if isinstance(part, ast.Constant) else "*" for part in given.values
        )
        return set(fnmatch.filter(ENTRIES, "".join(parts))) or {"without-any-entry-that-fits"}
    if isinstance(given, ast.Name):
        return {names[given.id]} if given.id in names else set()
    return (
        {given.value} if isinstance(given, ast.Constant) and isinstance(given.value, str) else set()
    )


def test_codes_are_found_through_helpers() -> None:
    text = """
FAR: Final = "far"
class Slip(Exception):
    def __init__(self, line: int, code: str): ...
class Worse(Slip): ...
def fault(code: str, words: str) -> Notice:
    return Notice(code, "error", "quilt", words)
Notice("plain", "advice", "quilt", "so")
Notice(code="named", severity="advice", stage="quilt", message="so")
fault("one" if x else "two-words", "so")
raise Worse(3, FAR)
    """
    notice = ast.parse((PACKAGE / "notice.py").read_text("utf-8"))
    expected = {"plain", "named", "one", "two-words", "far"}
    assert codes_in([notice, ast.parse(text)]) == expected


def test_every_notice_is_explained_and_none_besides() -> None:
    made = codes_in([ast.parse(file.read_text("utf-8")) for file in PACKAGE.rglob("*.py")])
    assert made - ENTRIES.keys() == set(), "without an entry in templates/explain/"
    assert ENTRIES.keys() - made - set(RULES) == set(), "explained, but never given"


def test_entries_fit_a_terminal() -> None:
    for code, entry in ENTRIES.items():
        title, *text = entry.splitlines()
        assert title, code
        assert all(len(line) <= 80 for line in text), code


def test_one_entry(run: Run) -> None:
    ran = run("explain", "r5")
    assert ran.code == 0
    assert ran.out.startswith("R5: Strips: pieces from one strip")


def test_without_a_code_all_are_listed(run: Run) -> None:
    listed = run("explain").out.splitlines()
    assert [line.split()[0] for line in listed] == list(ENTRIES)


def test_a_slip_of_the_code_is_helped(run: Run) -> None:
    ran = run("explain", "R55")
    assert (ran.code, ran.out) == (2, "")
    assert "Did you mean" in ran.err
