"""Plans spoilt on purpose, each in one way that a checker must not let through."""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from patternbook.cutting.planner.records import Answer, Prices


def one_strip_fewer(answer: Answer) -> Answer:
    """The last kind of strip is cut once less, and the cloth is that much shorter."""
    *strips, last = answer.strips
    fewer = [last._replace(times=last.times - 1)] if last.times > 1 else []
    saved = 0 if last.beside else last.height
    return replace(answer, strips=(*strips, *fewer), length=answer.length - saved)


def one_piece_wider(answer: Answer) -> Answer:
    """The first piece is cut one unit longer than it is asked for."""
    first, *strips = answer.strips
    piece, *columns = first.columns
    wider = first._replace(columns=(piece._replace(along=piece.along + 1), *columns))
    return replace(answer, strips=(wider, *strips))


def one_unit_too_wide(answer: Answer) -> Answer:
    """The cloth is one unit narrower than the fullest strip."""
    room = answer.block.width if answer.block else 0
    taken = max(
        sum(one.along * one.columns for one in strip.columns) + strip.beside * room
        for strip in answer.strips
    )
    return replace(answer, task=replace(answer.task, width=taken - 1))


def one_piece_more(answer: Answer) -> Answer:
    """One piece of the last kind is asked for that is not cut."""
    *kinds, last = answer.task.kinds
    more = (*kinds, last._replace(number=last.number + 1))
    return replace(answer, task=replace(answer.task, kinds=more))


def one_stack_higher(answer: Answer) -> Answer:
    """The first sub-cut holds one piece more than the strip is wide enough for."""
    first, *strips = answer.strips
    piece, *columns = first.columns
    higher = piece._replace(stack=first.height // piece.across + 1)
    return replace(answer, strips=(first._replace(columns=(higher, *columns)), *strips))


def dearer(answer: Answer) -> Answer:
    """All prices one hundredth higher."""
    return replace(answer, prices=tuple(_dearer(one) for one in answer.prices))


def _dearer(prices: Prices) -> Prices:
    kinds = tuple((name, -(-price * 101 // 100)) for name, price in prices.kinds)
    return prices._replace(kinds=kinds)


SPOILT: Final[dict[str, Callable[[Answer], Answer]]] = {
    "one strip fewer": one_strip_fewer,
    "one piece wider": one_piece_wider,
    "one unit too wide": one_unit_too_wide,
    "one piece more": one_piece_more,
    "one stack higher": one_stack_higher,
    "prices 1 % higher": dearer,
}
