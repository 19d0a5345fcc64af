"""From the top to the quilt: the steps as kinds and numbers."""

from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES
from patternbook.quilt.records import Quilt, Sides
from patternbook.sewing.plan import plan
from patternbook.sewing.records import Finish
from tests.sewing.hand import grid


def finish(quilt: Quilt) -> dict[str, Finish]:
    return {step.kind: step for step in plan(quilt)[0].finishing}


def test_the_order_is_the_trades() -> None:
    assert list(finish(grid(3, 4).quilt())) == [
        "layer",
        "baste",
        "quilt",
        "trim",
        "bind",
        "label",
    ]
    assert "bind" not in finish(grid(3, 4).quilt(binding=None))


def test_pins_are_four_to_six_inches_apart() -> None:
    """Source: quiltable.com/faq-items/basting-is-defined-as/ (pins every 4 to 6 inches)."""
    assert finish(grid(3, 4).quilt())["baste"].spacing == (Fraction(4), Fraction(6))
    assert finish(grid(3, 4).quilt(system=CENTIMETRES))["baste"].spacing == (
        Fraction(10),
        Fraction(15),
    )


def test_layers_and_binding_know_their_sizes() -> None:
    """Twelve by sixteen inches: 56 round, and 4 more backing on each side."""
    steps = finish(grid(6, 8).quilt())
    assert steps["layer"].size == Sides(Exact(Fraction(25, 2)), Exact(Fraction(33, 2)))
    assert steps["layer"].over == 4
    assert steps["bind"].perimeter == 56
    assert steps["bind"].width == Fraction(5, 2)
