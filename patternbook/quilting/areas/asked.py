"""The author's wishes for the areas: which are joined, left out, and what she calls them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
from shapely import Polygon

from patternbook.notice import Notice
from patternbook.quilting.areas.letters import lettered, names
from patternbook.quilting.areas.meant import ALL_OVER, called, kinds, meant
from patternbook.quilting.areas.measure import area_of, held
from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.shapes import polygons, sewn
from patternbook.quilting.areas.slivers import shared
from patternbook.quilting.records import Area, AreaKind, Top, Wish

Told = tuple[tuple[Area, ...], tuple[Notice, ...]]


def as_wished(areas: Sequence[Area], wishes: Sequence[Wish], top: Top) -> Told:
    """The areas as the author wants them, and what could not be done."""
    told: list[Notice] = []
    found = list(areas)
    for wish in wishes:
        if wish.merge:
            told += _unknown((wish.area, *wish.merge), areas, top)
            found, notices = _merged(found, wish, top)
            told += notices
    for wish in wishes:
        if wish.name:
            found = [_named(area, wish, top) for area in found]
    for wish in wishes:
        if not wish.merge:
            told += _unknown((wish.area,), found, top)
    return tuple(_excluded(area, wishes, top) for area in found), tuple(dict.fromkeys(told))


def _named(area: Area, wish: Wish, top: Top) -> Area:
    return replace(area, name=wish.name) if meant(wish, area, top) else area


def _excluded(area: Area, wishes: Sequence[Wish], top: Top) -> Area:
    excluded = any(wish.exclude and meant(wish, area, top) for wish in wishes)
    return replace(area, excluded=excluded)


def _unknown(words: Sequence[str], areas: Sequence[Area], top: Top) -> Iterator[Notice]:
    for word in words:
        if not any(called(word, area, top) for area in areas):
            yield Notice(
                "quilting-area",
                "warning",
                "quilting",
                f"the quilting names the area “{word}”, and the top has none of that name.",
                hint=f"The areas of this top are {_list(known(areas))}.",
            )


def known(areas: Sequence[Area]) -> list[str]:
    """What the areas may be called, the widest words first."""
    words = sorted({word for area in areas for word in kinds(area)} - {"border"})
    borders = sorted({f"border {number}" for area in areas for number in area.borders})
    letters = dict.fromkeys(area.letter for area in areas)
    names = dict.fromkeys(area.name for area in areas if area.name)
    units = sorted({unit for area in areas for unit in area.units})
    return list(dict.fromkeys([ALL_OVER, *words, *borders, *letters, *names, *units]))


def _list(words: Sequence[str]) -> str:
    return ", ".join(words[:-1]) + f" and {words[-1]}" if len(words) > 1 else "".join(words)


def _merged(areas: list[Area], wish: Wish, top: Top) -> tuple[list[Area], list[Notice]]:
    """The areas that a wish joins, as one where they touch; what touches none stays."""
    words = (wish.area, *wish.merge)
    wanted = [area for area in areas if any(called(word, area, top) for word in words)]
    groups = [group for group in _touching(wanted) if len(group) > 1]
    if len(wanted) > 1 and not groups:
        return areas, [_apart(words, "they do not touch")]
    made = [(group, polygons(sewn(area.shape for area in group))) for group in groups]
    whole = [(g, shapes[0]) for g, shapes in made if len(shapes) == 1 and not shapes[0].interiors]
    told = [_apart(words, "others lie within them")] if len(whole) < len(made) else []
    gone = {area.key for group, _ in whole for area in group}
    rest = [area for area in areas if area.key not in gone]
    order = {letter: n for n, letter in enumerate(dict.fromkeys(area.letter for area in areas))}
    found = [
        *rest,
        *(replace(area, joined=(*area.joined, wish.area)) for area in _as_one(whole, rest, top)),
    ]
    return sorted(found, key=lambda a: (order.get(a.letter, len(order)), a.letter, a.number)), told


def _apart(words: Sequence[str], why: str) -> Notice:
    return Notice(
        "quilting-area",
        "warning",
        "quilting",
        f"the areas {_list([f'“{word}”' for word in words])} cannot be joined into one: {why}.",
        hint="Join areas that have a rim in common, and that close no ring.",
    )


def _touching(areas: Sequence[Area]) -> list[list[Area]]:
    """Areas that touch, in groups."""
    groups: list[list[Area]] = []
    for area in areas:
        near = [group for group in groups if _touches(area, group)]
        groups = [group for group in groups if group not in near]
        groups.append([*(one for group in near for one in group), area])
    return groups


def _touches(area: Area, group: Sequence[Area]) -> bool:
    return any(rim > 0.01 for rim in shared(area.shape, np.array([one.shape for one in group])))


def _as_one(
    whole: Sequence[tuple[Sequence[Area], Polygon]], rest: Sequence[Area], top: Top
) -> Iterator[Area]:
    """Joined areas. They keep the letter of the first where no other area has it, else they get
    the next one."""
    parts = [Part(_kind(group), shape) for group, shape in whole]
    pieces = {cloth.letter for cloth in top.cloths}
    used = {area.letter for area in rest}
    letters: dict[str, str] = {}
    alike = lettered(parts, top.rules, ())
    for (group, _), part, within, (like, number) in zip(
        whole, parts, held(parts, top), alike, strict=True
    ):
        if like not in letters:
            own = group[0].letter
            every = used.union(pieces, *({area.letter for area in g} for g, _ in whole))
            letters[like] = next(names(every)) if own in used else own
            used.add(letters[like])
        found = area_of(part, (letters[like], number), within)
        yield replace(
            found, joined=tuple(key for area in group for key in (area.key, *area.joined))
        )


def _kind(group: Sequence[Area]) -> AreaKind:
    """The kind of the largest; a channel joined to others is ground."""
    kind = max(group, key=lambda area: (float(area.shape.area), -area.number)).kind
    alone = all(area.kind == kind for area in group)
    return "ground" if not alone and kind in {"channel", "square", "band", "corner"} else kind
