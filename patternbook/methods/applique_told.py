"""How an appliqué block is made, action by action, each with its sketch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Fusing, Placed, Sides
from patternbook.methods.pieced import Point

NBSP: Final = "\u00a0"


class Block(NamedTuple):
    """The ground and the shapes in their places; what the block finishes, and how large the ground
    is cut. `under` is how far a shape goes under its neighbour."""

    ground: str
    shapes: tuple[Placed, ...]
    finished: Sides
    raw: Sides
    seam: Exact
    under: Exact
    fusing: Fusing | None

    @property
    def measure(self) -> Sides:
        """What it is trimmed to."""
        return Sides(*(side + self.seam * 2 for side in self.finished))

    @property
    def trimmed(self) -> bool:
        """Whether the ground is cut larger than that."""
        return self.raw != self.measure

    @property
    def order(self) -> str:
        """`1 L, 2 P`: the order of laying and of stitching."""
        names = [_name(shape) for shape in self.shapes]
        return ", ".join(f"{number}{NBSP}{name}" for number, name in enumerate(names, 1))

    @property
    def counted(self) -> str:
        """`1 L and 2 P`."""
        counts = Counter(_name(shape) for shape in self.shapes)
        each = [f"{number}{NBSP}{name}" for name, number in counts.items()]
        return " and ".join(filter(None, (", ".join(each[:-1]), each[-1])))

    def lying(self, shape: Placed) -> tuple[Point, ...]:
        """A shape on the ground as it is cut, the block in the middle of it."""
        pairs = zip(self.raw, self.finished, strict=True)
        left, top = (float(raw - finished) / 2 for raw, finished in pairs)
        return tuple((x + left, y + top) for x, y in _points(shape))


def actions(block: Block) -> tuple[Action, ...]:
    """All that is done for one block."""
    return (*_cut_out(block), *_laid(block), *_stitched(block))


def _cut_out(block: Block) -> Iterator[Action]:
    """From the template to the shape, reversed until it is turned over again."""
    shapes = _on_cloth(block)
    if block.fusing is None:
        words = (
            f"Trace {block.counted} on the wrong side of their cloth, from the reversed templates."
        )
        yield Action("trace", words, (), shapes)
        yield Action("cut", "Cut out on the lines: there is no seam allowance.")
        return
    margin = Exact(block.fusing.margin)
    words = (
        f"Trace {block.counted} on the paper side of {_web(block.fusing.web)}, from the reversed "
        "templates, at least {0} apart. Cut them out roughly, {1} outside the lines."
    )
    yield Action("trace", words, (margin * 2, margin))
    yield Action(
        "fuse",
        "Lay each on the wrong side of its cloth, paper up, no web beyond the edge of the cloth, "
        "and fuse it as the maker of the web says. The iron, the cloth and the web are hot: let "
        "them cool before you take hold of them.",
        (),
        shapes,
    )
    yield Action(
        "cut", "Cut out on the lines: there is no seam allowance. Peel off the paper when cold."
    )


def _laid(block: Block) -> Iterator[Action]:
    """On the ground, in the order of stitching."""
    words = (
        f"Fold {block.ground} in half both ways to find its middle. Lay the shapes on it, right "
        f"sides up, as the picture shows: {block.order}."
    )
    figures: tuple[Exact, ...] = ()
    if len(block.shapes) > 1:
        words += " Where two meet, the one laid first goes {0} under the next."
        figures = (block.under,)
    yield Action("lay", words, figures, _picture(block))
    if block.fusing is not None:
        yield Action("fuse", "When all lie well, fuse them down.")
    else:
        yield Action("baste", "Pin or baste them down.")


def _stitched(block: Block) -> Iterator[Action]:
    order = f", in the same order: {block.order}" if len(block.shapes) > 1 else ""
    edges = tuple(_closed(block.lying(shape), pieced.sew) for shape in block.shapes)
    yield Action(
        "sew",
        f"Stitch over the edge of every shape{order}. Press from the wrong side.",
        (),
        (*_picture(block), *edges),
    )
    if block.trimmed:
        words = "Trim to {0}, the middle of the folds in the middle."
        yield Action("trim", words, (block.measure,), (*_picture(block), *_cuts(block)))


# ---- sketches


def _name(shape: Placed) -> str:
    return f"{shape.part} turned over" if shape.turn.mirrored else shape.part


def _web(name: str) -> str:
    called = name.replace("-", " ")
    return "the web" if called in ("web", "fusible web") else f"{called}, the web"


def _points(shape: Placed) -> tuple[Point, ...]:
    corners = shape.outline.corners if shape.outline else ()
    return tuple((float(x), float(y)) for x, y in corners)


def _closed(points: tuple[Point, ...], draw: Callable[..., Drawn]) -> Drawn:
    return draw(*points, *points[:1])


def _picture(block: Block) -> tuple[Drawn, ...]:
    ground = pieced.rectangle(0.0, 0.0, float(block.raw.across), float(block.raw.down))
    shapes = (pieced.cloth(shape.part, block.lying(shape)) for shape in block.shapes)
    return (pieced.cloth(block.ground, ground), *shapes)


def _on_cloth(block: Block) -> tuple[Drawn, ...]:
    """The shapes reversed, each on the wrong side of its cloth."""
    drawn, left = [], 0.0
    apart = float(block.under) * 2
    for shape in _each_once(block.shapes):
        points = _points(shape)
        xs, ys = zip(*points, strict=True)
        right, top = max(xs), min(ys)
        wide, high = right - min(xs), max(ys) - top
        traced = tuple((right - x + left, y - top) for x, y in points)
        drawn.append(pieced.wrong_side(shape.part, pieced.rectangle(left, 0.0, wide, high)))
        drawn.append(_closed(traced, pieced.mark))
        left += wide + apart
    return tuple(drawn)


def _each_once(shapes: Iterable[Placed]) -> Iterable[Placed]:
    return {(shape.part, shape.turn): shape for shape in shapes}.values()


def _cuts(block: Block) -> tuple[Drawn, ...]:
    (wide, high), (across, down) = block.raw, block.measure
    left, top = float(wide - across) / 2, float(high - down) / 2
    right, low = float(wide) - left, float(high) - top
    lines = (
        ((left, 0.0), (left, float(high))),
        ((right, 0.0), (right, float(high))),
        ((0.0, top), (float(wide), top)),
        ((0.0, low), (float(wide), low)),
    )
    return tuple(pieced.cut(*line) for line in lines)
