"""From the written source to one exact quilt a size, with all that the author must be told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from patternbook.notice import Mark, Notice
from patternbook.quilt import assemble
from patternbook.quilt.believe import contradictions
from patternbook.quilt.counts import Counted, count
from patternbook.quilt.equivalents import equivalents
from patternbook.quilt.heading import Heading, Revision
from patternbook.quilt.in_print import charts
from patternbook.quilt.mistaken import mistaken, unknown
from patternbook.quilt.off_ruler import with_sizes
from patternbook.quilt.parts import TOP
from patternbook.quilt.piece_lengths import lengths_found
from patternbook.quilt.place import MOST_PATCHES
from patternbook.quilt.records import Quilt
from patternbook.quilt.repeats import COUNTED, offered
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.standing import standings, trust
from patternbook.quilt.stated import stated_counts, unused
from patternbook.quilt.templates_told import templates_told
from patternbook.quilt.trimmed import trimmed
from patternbook.source.drawings import Pictures
from patternbook.source.written import WrittenPattern


class Quilts(NamedTuple):
    """The sizes that could be worked out, in the order written, and the notices of all."""

    heading: Heading
    sizes: Mapping[str, Quilt]
    notices: tuple[Notice, ...]


def quilts(written: WrittenPattern, pictures: Pictures | None = None) -> Quilts:
    """Work out every size."""
    made: dict[str, Quilt] = {}
    notices: list[Notice] = []
    for resolver in solved(written, pictures):
        quilt, told = one_size(resolver)
        notices.extend(told)
        if quilt is not None:
            made[resolver.size] = quilt
    return Quilts(heading(written), made, tuple(_nowhere(notices, len(written.sizes))))


def _nowhere(notices: list[Notice], sizes: int) -> Iterator[Notice]:
    """The notices, but of what one size does not use only what no size uses."""
    unused = Counter(notice.marks for notice in notices if notice.code in NEVER)
    for notice in notices:
        if notice.code not in NEVER or unused[notice.marks] == sizes:
            yield notice


# So that with paper and size it still is a file's name everywhere.
LONGEST_SLUG = 80
NEVER = frozenset({"never-sewn", "never-placed"})


def solved(written: WrittenPattern, pictures: Pictures | None = None) -> tuple[Resolver, ...]:
    """The lengths of every size; each knows the others, for one number may serve them all."""
    peers = {str(size): Resolver(written, str(size), pictures) for size in written.sizes}
    for resolver in peers.values():
        resolver.solve()
        resolver.peers = peers
    return tuple(peers.values())


def one_size(resolver: Resolver) -> tuple[Quilt | None, tuple[Notice, ...]]:
    """One size; None where its lengths do not hold, for its counts would mislead."""
    notices = [with_sizes(notice, resolver) for notice in lengths_found(resolver)]
    notices += offered(resolver, tuple(contradictions(resolver)))
    notices += [*templates_told(resolver), *trimmed(resolver), *equivalents(resolver)]
    if resolver.broken:
        return None, unknown(resolver).without((*resolver.notices, *notices))
    if any(notice.code == COUNTED for notice in notices):  # numbers that differ only follow
        return None, (*resolver.notices, *notices)
    counted = count(resolver)
    found = mistaken(resolver, counted)
    if found.notices:  # numbers that differ, and what is left over, only follow from it
        return None, found.without((*resolver.notices, *notices))
    notices += [*stated_counts(resolver, counted), *trust(resolver)]
    notices += [*unused(resolver, counted), *_too_many(resolver, counted)]
    if any(notice.code in HOPELESS for notice in notices):
        return None, (*resolver.notices, *notices)
    quilt = assemble.quilt(resolver, counted, standings(resolver))
    return quilt, (*resolver.notices, *notices)


HOPELESS = frozenset({"not-fixed", "no-room", "off-ruler", "too-many-patches"})


def _too_many(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    """An error where the top holds more patches than can be drawn or checked."""
    if TOP not in resolver.units:
        return
    patches = dict.fromkeys(resolver.pieces, 1)
    for name in counted.order:
        parts = counted_parts(name, resolver)
        patches[name] = sum(number * patches.get(part, 1) for part, number in parts.items())
    number = patches.get(TOP, 0)
    if number > MOST_PATCHES:
        place = resolver.units[TOP].place
        message = f"the top would have {number} patches; {MOST_PATCHES} is the most."
        marks = (Mark(place, "here"),)
        hint = "Look for a count that is far too large."
        size = (resolver.size,)
        yield Notice("too-many-patches", "error", "quilt", message, marks, "R8", size, hint=hint)


def counted_parts(name: str, resolver: Resolver) -> Mapping[str, int]:
    """What one unit takes of each part; a strip set's slice has one patch a strip."""
    if name in resolver.broken:
        return {}
    return resolver.work(name).patches(name, resolver.units[name], resolver)


def heading(written: WrittenPattern) -> Heading:
    """The words of the cover."""
    name = str(written.pattern)
    return Heading(
        pattern=name,
        slug=text_of(written.slug) or slug(name),
        summary=text_of(written.summary),
        by=text_of(written.by),
        date=written.date.day.isoformat() if written.date is not None else None,
        revision=int(written.revision),
        licence=text_of(written.licence),
        level=text_of(written.level),
        contact=text_of(written.contact),
        site=text_of(written.site),
        report=text_of(written.report),
        lesson=text_of(written.lesson),
        tools=tuple(str(tool) for tool in written.tools),
        sizes=tuple(str(size) for size in written.sizes),
        revisions=tuple(
            Revision(
                int(entry.number),
                entry.date.day.isoformat(),
                text_of(entry.why) or text_of(entry.was) or "",
                text_of(entry.if_cut),
                text_of(entry.if_sewn),
            )
            for entry in written.revisions
        ),
        charts=tuple(charts(written)),
    )


def text_of(value: str | None) -> str | None:
    """The bare words, without their place."""
    return str(value) if value is not None else None


def slug(name: str) -> str:
    """The name as part of an address: small letters, figures and hyphens."""
    plain = "".join(c.lower() if c.isascii() and c.isalnum() else " " for c in name)
    return "-".join(plain.split())[:LONGEST_SLUG].strip("-") or "pattern"
