"""The last steps in words, right for each choice: backing, layers, binding and label."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from patternbook.booklet import binding_words, wording
from patternbook.booklet.book import Book
from patternbook.cutting.records import Insert
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import Finish

Action = tuple[str, str]


def actions(book: Book) -> Iterator[Action]:
    """Each of the last steps with its words, in order."""
    if any(known.cutting.backing for known in book.all):
        yield "Backing", _backing(book)
    if any(_insert(known) for known in book.all):
        yield "Strip for the backing", by_size(book, _strip)
    yield from _layers(book)
    yield from _edges(book)


def by_size(book: Book, tell: Callable[[Evidence], str]) -> str:
    """The words once where all sizes have the same, else size by size."""
    told = dict(zip(book.names, book.each(tell), strict=True))
    if len(set(told.values())) == 1:
        return next(iter(told.values()))
    return " ".join(f"{name}: {words}" for name, words in told.items() if words)


def _finish(book: Book, kind: str) -> Finish | None:
    return next((one for one in book.first.sewing.finishing if one.kind == kind), None)


def _backing(book: Book) -> str:
    plans = [known.cutting.backing for known in book.all if known.cutting.backing]
    seam = wording.length(plans[0].seam, book.system)
    joined = any(plan.best.joins for plan in plans)
    lengths = (
        "Cut the lengths that the table names and trim off the selvedges. Join them side by side "
        f"with {seam} seams and press the seams open."
        if joined
        else "Cut the one length that the table names and trim off the selvedges: it needs no seam."
    )
    return f"{lengths} {by_size(book, _over)}"


def _over(known: Evidence) -> str:
    """How far it stands out, and what the other way of quilting takes."""
    plan = known.cutting.backing
    if plan is None:
        return ""
    over, frame, home = (
        wording.length(length, known.quilt.system)
        for length in (plan.over, plan.frame.over, plan.home.over)
    )
    if plan.by == "home":
        return f"It is {over} larger on each side, for quilting at home; a frame wants {frame}."
    if plan.by == "frame":
        return f"It is {over} larger on each side, for a frame; at home {home} will do."
    return f"It is {over} larger on each side: a frame wants {frame}, at home {home} will do."


def _apart(insert: Insert, known: Evidence) -> str:
    """Where the strip goes."""
    if not insert.split:
        return "It goes between the first two lengths."
    at = wording.length(insert.split, known.quilt.system)
    return f"Cut the one length of cloth apart along it, {at} from an edge: it goes in between."


def _insert(known: Evidence) -> Insert | None:
    plan = known.cutting.backing
    return plan.best.insert if plan else None


def _strip(known: Evidence) -> str:
    """The patches of spare cloth, and how they become the strip."""
    strip, plan, system = _insert(known), known.cutting.backing, known.quilt.system
    if strip is None or plan is None:
        return "none is needed."
    patches = wording.listed(
        f"{wording.counted(one.number, 'patch')} "
        f"{wording.size(one.across, one.along, system)} of {one.fabric}"
        for one in strip.patches
    )
    seam, width, length = (
        wording.length(one, system) for one in (plan.seam, strip.width, strip.length)
    )
    several = sum(one.number for one in strip.patches) > 1
    told = (
        f"When the top is sewn, cut {patches} from what is to spare.",
        f"Join them end to end, {width} edges together, with {seam} seams, and press them open."
        if several
        else "",
        f"Trim the strip to {length}." if strip.made > strip.length else "",
        _apart(strip, known),
    )
    return " ".join(filter(None, told))


def _layers(book: Book) -> Iterator[Action]:
    layer, baste, quilt = (_finish(book, kind) for kind in ("layer", "baste", "quilt"))
    if any(_batting_joins(known) for known in book.all):
        yield (
            "Batting",
            (
                "Of two pieces cut the edges straight, lay them so that they just touch, and sew "
                "them together with a wide zigzag: nothing overlaps."
            ),
        )
    if layer:
        yield "Layer", by_size(book, _layer)
    if baste and baste.spacing:
        apart = wording.between(*baste.spacing, book.system)
        yield "Baste", f"From the middle outward, pin through all layers every {apart}."
    if quilt:
        yield (
            "Quilt",
            "Quilt as the quilting page suggests, or as you like, from the middle outward.",
        )


def _batting_joins(known: Evidence) -> bool:
    plan = known.cutting.batting
    if plan is None:
        return False
    return plan.roll.panels > 1 if plan.roll else plan.packs > 1


def _layer(known: Evidence) -> str:
    words = (
        "Tape the backing wrong side up on a flat floor, smooth but not stretched. Lay the "
        "batting on it, then the pressed top right side up in the middle."
    )
    plan = known.cutting.backing
    if plan is not None and plan.by == "frame":
        return (
            "For a frame leave the three layers apart, pressed and unpinned, with the top edge of "
            f"the quilt marked. To quilt at home instead: {words[0].lower()}{words[1:]}"
        )
    return words


def _edges(book: Book) -> Iterator[Action]:
    trim, bind, label = (_finish(book, kind) for kind in ("trim", "bind", "label"))
    if trim:
        yield "Trim", by_size(book, _trim)
    if bind and any(known.cutting.binding for known in book.all):
        yield from _binding(book)
    if label:
        yield "Label", by_size(book, _label)


def _binding(book: Book) -> Iterator[Action]:
    """How it is made, and how it is sewn on; once for all sizes that are bound alike."""
    alike: dict[tuple[object, ...], dict[str, Evidence]] = {}
    for name, known in zip(book.names, book.all, strict=True):
        if known.cutting.binding is not None:
            alike.setdefault(binding_words.choices(known), {})[name] = known
    told = [(sizes, max(sizes.values(), key=binding_words.joins)) for sizes in alike.values()]
    for head, tell in (("Make the binding", binding_words.made), ("Bind", binding_words.sewn_on)):
        words = [
            tell(known) if len(told) == 1 else f"{wording.listed(sizes)}: {tell(known)}"
            for sizes, known in told
        ]
        if any(words):
            yield head, " ".join(words)


def _trim(known: Evidence) -> str:
    plan, level = known.cutting.binding, "Trim batting and backing level with the top"
    if plan is None or plan.radius is None:
        return f"{level}, with square corners."
    across = wording.length(2 * plan.radius, known.quilt.system)
    return (
        f"{level}. Draw each corner round a plate {across} across that touches both edges, and cut "
        "on the line."
    )


def _label(known: Evidence) -> str:
    """Size, cloth, words and place: lower right of the back."""
    plan = known.cutting.label
    if plan is None:
        return "Sew a label to the lower right corner of the back."
    hem = wording.length(known.quilt.seam, known.quilt.system)
    return (
        f"Cut it from spare cloth and write in lasting ink: {wording.listed(plan.lines)}. Turn "
        f"{hem} under all round; sew it to the lower right corner of the back."
    )
