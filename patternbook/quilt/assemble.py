"""The frozen quilt of one size, put together from what was worked out and counted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import ruler_up
from patternbook.linear import Key
from patternbook.methods.made import Sides
from patternbook.methods.world import here
from patternbook.quilt.counts import Counted
from patternbook.quilt.directions import upright
from patternbook.quilt.finishing import backing, batting, binding, label, quilting
from patternbook.quilt.hands import in_goes
from patternbook.quilt.house_rules import settings
from patternbook.quilt.in_print import again
from patternbook.quilt.parts import TOP
from patternbook.quilt.records import CutSize, Fabric, Piece, PiecedMade, Quilt, Run, Standing, Unit
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.sizing import allowance
from patternbook.quilt.template import Template
from patternbook.quilt.templates import cut_from
from patternbook.quilt.value_places import value_places
from patternbook.source.cloth import WrittenFabric, WrittenPiece


def quilt(resolver: Resolver, counted: Counted, standings: Mapping[Key, Standing]) -> Quilt:
    """One size as a frozen record."""
    units = {
        name: _unit(name, resolver, counted)
        for name in counted.order
        if name not in resolver.broken and counted.make[name]
    }
    top = TOP if TOP in units else None
    pieces = {
        letter: _piece(letter, piece, resolver, counted)
        for letter, piece in resolver.pieces.items()
        if counted.uses[letter] or TOP not in resolver.units
    }
    written = resolver.written
    if top and any(fabric.direction == "one-way" for fabric in resolver.fabrics.values()):
        pieces = upright(pieces, units, resolver.fabrics)
    return Quilt(
        size=resolver.size,
        system=resolver.system,
        seam=resolver.length(resolver.seam).fraction,
        width=written.width.number if written.width else resolver.system.width,
        finished=units[TOP].finished if top else _asked(resolver),
        fabrics={
            name: _fabric(name, fabric, resolver) for name, fabric in resolver.fabrics.items()
        },
        # Of a fragment's piece that has no count (which is told) there is nothing to plan.
        pieces={
            letter: piece
            for letter, piece in pieces.items()
            if piece.is_strip or piece.count + piece.spare
        },
        units=units,
        top=top,
        backing=backing(resolver),
        batting=batting(resolver),
        binding=binding(resolver),
        quilting=quilting(resolver),
        settings=settings(written.settings, resolver.system),
        standings=standings,
        numbers=dict(resolver.names),
        words={
            word: str(text) for word, text in written.words if text is not None and word in WORDS
        },
        place=written.place,
        again=tuple(again(resolver)),
        printed=written.printed == "yes",
        key_places=written.key_places,
        label=label(resolver),
    )


WORDS = ("welcome", "cutting", "sewing", "quilting", "finishing", "care")


def _unit(name: str, resolver: Resolver, counted: Counted) -> Unit:
    written = resolver.units[name]
    work, make = resolver.work(name), counted.make[name]
    placed, made = work.make(name, written, resolver, make)
    mirrored = counted.mirrored.get(name, 0)
    if isinstance(made, PiecedMade):
        made = replace(made, goes=in_goes(make, mirrored, made.gives))
    span = resolver.sum_of(name)
    finished = Sides(resolver.length(span.across), resolver.length(span.down))
    seams = resolver.length(resolver.seam) * 2
    return Unit(
        name=name,
        method=str(written.method),
        finished=finished,
        measure=Sides(finished.across + seams, finished.down + seams),
        make=make,
        placed=placed,
        uses=dict(work.need(name, written, resolver, 1).parts),
        made=made,
        press=tuple(str(word) for word in here(written.press, resolver.size) or ()),
        note=str(written.note) if written.note else None,
        place=written.place,
        mirrored=mirrored,
        press_at=tuple(word.place for word in here(written.press, resolver.size) or ()),
    )


def _asked(resolver: Resolver) -> Sides | None:
    """Of a fragment without a top: how large its quilt is said to be."""
    size = resolver.goal.finished
    if size is None or TOP in resolver.units:
        return None
    return Sides(Exact(size.across), Exact(size.down))


def _fabric(name: str, written: WrittenFabric, resolver: Resolver) -> Fabric:
    size = resolver.size
    yards, metres = here(written.yards, size), here(written.metres, size)
    prints = resolver.number(written.prints, f"{name}: prints", least=1)
    stated = written.size
    return Fabric(
        name=name,
        use=str(written.use or name),
        form=str(written.form),
        width=resolver.width_of(written),
        tone=str(written.tone) if written.tone else None,  # type: ignore[arg-type]
        colour=str(written.colour) if written.colour else None,
        size=CutSize(stated.across, stated.down) if stated else None,
        pack=int(written.pack) if written.pack is not None else None,
        prints=prints or 1,
        one_print_per=str(written.one_print_per),
        apart=written.apart == "yes",
        seed=int(written.seed),
        one_way=written.direction == "one-way",
        stated_yards=yards.number if yards else None,
        stated_metres=metres.number if metres else None,
        stated_packs=resolver.number(written.packs, f"{name}: packs"),
        note=str(written.note) if written.note else None,
        place=written.place,
        key_places=value_places(written, resolver.size),
    )


def _piece(letter: str, written: WrittenPiece, resolver: Resolver, counted: Counted) -> Piece:
    size = resolver.size
    stated_count = resolver.number(written.count, f"{letter}: count")
    count = counted.number(letter)
    if not counted.uses[letter] and TOP not in resolver.units:
        count = stated_count or _squares_worth(letter, written, resolver)
    span = resolver.sum_of(letter)
    finished = Sides(resolver.length(span.across), resolver.length(span.down))
    fabric, strip_width = here(written.fabric, size), here(written.strip_width, size)
    strip_length, angle = here(written.strip_length, size), here(written.angle, size)
    drawn = resolver.drawn(letter)
    host, diagonal = here(written.with_, size), here(written.diagonal, size)
    return Piece(
        letter=letter,
        fabric=str(fabric) if fabric else None,
        cut=cut_size(written, finished, resolver, drawn),
        finished=finished,
        count=count,
        runs=_runs(letter, resolver, counted),
        mirrored=counted.other_hand[letter],
        spare=resolver.number(written.spare, f"{letter}: spare") or 0,
        diagonal=str(diagonal) if diagonal else None,  # type: ignore[arg-type]
        template=drawn,
        along=str(written.along.at(size)),  # type: ignore[arg-type]
        join=str(written.join.at(size)),  # type: ignore[arg-type]
        host=str(host) if host else None,
        strip_width=strip_width.number if strip_width else None,
        stated_count=stated_count,
        stated_squares=resolver.number(written.squares, f"{letter}: squares"),
        stated_strips=resolver.number(written.strips, f"{letter}: strips"),
        stated_per_strip=resolver.number(written.per_strip, f"{letter}: per-strip", least=1),
        stated_per_square=resolver.number(written.per_square, f"{letter}: per-square", least=1),
        stated_strip_length=strip_length.number if strip_length else None,
        stated_angle=angle.number if angle else None,
        around=resolver.number(written.around, f"{letter}: around", least=1),
        note=str(written.note) if written.note else None,
        place=written.place,
        key_places=value_places(written, resolver.size),
    )


def _squares_worth(letter: str, written: WrittenPiece, resolver: Resolver) -> int:
    squares = resolver.number(written.squares, f"{letter}: squares") or 0
    diagonal = here(written.diagonal, resolver.size)
    return squares * {None: 1, "once": 2, "twice": 4}[str(diagonal) if diagonal else None]


def cut_size(
    written: WrittenPiece,
    finished: Sides,
    resolver: Resolver,
    by_template: Template | None = None,
) -> CutSize:
    """What to cut: as stated, or worked out and rounded up once to the ruler's marks."""
    cut = here(written.cut, resolver.size)
    if by_template is not None:
        seam = resolver.length(resolver.seam).fraction
        return cut_from(cut, by_template, finished, seam, resolver.system)
    loss = resolver.length(allowance(written, resolver))
    sides: list[Fraction] = []
    for stated, side in (
        (cut.across if cut else "fit", finished.across),
        (cut.down if cut else "fit", finished.down),
    ):
        if stated == "WOF":
            return CutSize(sides[0], None)
        whole = ruler_up(side + loss, resolver.system)
        sides.append(stated if isinstance(stated, Fraction) else whole)
    return CutSize(sides[0], sides[1])


def _runs(letter: str, resolver: Resolver, counted: Counted) -> tuple[Run, ...]:
    return tuple(
        Run(need.use, ruler_up(need.length, resolver.system), need.number, need.whole)
        for need in counted.runs[letter]
        if need.number
    )
