"""Shared and thrifty cutting: what may lie anywhere is laid by the planner, and proven."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final, Literal

from patternbook.cutting.buying import Basket, rounded
from patternbook.cutting.cloth import form_of
from patternbook.cutting.fabric import FabricCut, Laid, Wanted, assembled
from patternbook.cutting.planner.records import (
    Answer,
    Block,
    Column,
    Kind,
    SheetsAnswer,
    SheetsTask,
    StripLaid,
)
from patternbook.cutting.planner.sheets import solve_sheets
from patternbook.cutting.planner.solve import solve
from patternbook.cutting.records import Cut, Least, LetterPlan, Row, Sheet, Strip, Style
from patternbook.cutting.wishes import Wishes, kinds, task, wishes
from patternbook.quilt.records import Quilt

# A length that three folds bring under the ruler; a longer block cannot be cut along the cloth.
LONGEST: Final = {"in": 8 * 24, "cm": 8 * 60}
Planned = Literal["shared", "thrifty"]
# What is told of strips that only plain cutting has.
OF_PLAIN_STRIPS: Final = ("exact-fit", "exact-count", "scant-strips", "per-strip", "turned-strip")


def planned(quilt: Quilt, wanted: Wanted, plain: FabricCut, style: Style) -> FabricCut:
    """The same fabric in this style, never with more cloth than in plain cutting."""
    if style == "plain":
        return plain
    laid = plain.laid
    wished = wishes(quilt, laid)
    if not wished.free or any(group.unlaid for group in laid.groups):
        return _as_plain(plain, style)
    if form_of(wanted.fabric).sold != "by length":
        return _from_sheets(quilt, wanted, plain, wished, style)
    return _from_the_bolt(quilt, wanted, plain, wished, style)


def _as_plain(plain: FabricCut, style: Style) -> FabricCut:
    """Nothing of it can be laid otherwise."""
    return replace(plain, plan=replace(plain.plan, style=style))


def _from_the_bolt(
    quilt: Quilt, wanted: Wanted, plain: FabricCut, wished: Wishes, style: Planned
) -> FabricCut:
    answer = solve(task(quilt, plain.laid, wished, style))
    if answer.block and answer.block.length * wished.unit > LONGEST[quilt.system.unit]:
        return plain
    laid = _spread(plain.laid, wished, _bolt_strips(wished, answer, plain.laid))
    made = _assembled(quilt, wanted, plain, laid)
    bound = wished.fixed_length + answer.bound * wished.unit
    proven = _buys_as_much(quilt, wanted, made, bound)
    plan = replace(
        made.plan,
        style=style,
        bound=bound,
        proven=proven,
        # The planner knows of no shrinkage: what it thought settled may not be.
        limit_hit=answer.limit_hit or not proven,
        least=_least(wished, answer),
    )
    return replace(made, plan=plan)


def _buys_as_much(quilt: Quilt, wanted: Wanted, made: FabricCut, bound: Fraction) -> bool:
    """Whether a plan as short as the bound would save nothing in the shop."""
    plan = made.plan
    basket = Basket(wanted.fabric, plan.buy.lines, plan.strips, plan.sheets, made.letters)
    return rounded(quilt, basket, plan.length) == rounded(quilt, basket, bound)


def _assembled(quilt: Quilt, wanted: Wanted, plain: FabricCut, laid: Laid) -> FabricCut:
    letters = tuple(_letter(letter, laid.strips) for letter in plain.letters)
    told = [notice for notice in plain.of_letters if notice.code not in OF_PLAIN_STRIPS]
    return assembled(quilt, wanted, laid, letters, told)


def _letter(plan: LetterPlan, strips: Sequence[Strip]) -> LetterPlan:
    """How one letter is cut, now that strips are shared."""
    mine = [strip for strip in strips if plan.letter in strip.letters]
    return replace(
        plan,
        host=None,
        strips=sum(strip.times for strip in mine),
        exact_fit=False,
        exact_count=False,
        other=None,
    )


def _spread(laid: Laid, wished: Wishes, strips: Sequence[tuple[str, Strip]]) -> Laid:
    """Strips in the order of cutting: lengths of the cloth, what lies beside them, then the
    widest."""
    owned = sorted(
        (*strips, *wished.fixed),
        key=lambda pair: (pair[1].along == "width", not pair[1].beside, -pair[1].width),
    )
    owners = {place: letter for place, (letter, _) in enumerate(owned)}
    return replace(laid, strips=tuple(strip for _, strip in owned), owners=owners)


def _bolt_strips(wished: Wishes, answer: Answer, laid: Laid) -> list[tuple[str, Strip]]:
    block = answer.block
    strips = [_strip(wished, strip, laid.cloth.run, block) for strip in answer.strips]
    if block is not None and block.columns:
        strips.insert(0, _block(wished, block, laid.cloth.run))
    return [(", ".join(strip.letters), strip) for strip in strips]


def _strip(wished: Wishes, strip: StripLaid, run: Fraction, block: Block | None) -> Strip:
    taken = block.width * wished.unit if block and strip.beside else Fraction(0)
    return Strip(
        strip.height * wished.unit,
        run - taken,
        strip.times,
        tuple(_cut(wished, column) for column in strip.columns),
        beside=strip.beside,
    )


def _cut(wished: Wishes, column: Column) -> Cut:
    wish = wished.free[int(column.kind)]
    return Cut(
        wish.letter,
        column.along * wished.unit,
        column.across * wished.unit,
        column.pieces,
        column.stack,
        wish.use,
        above=tuple(_cut(wished, over) for over in column.above),
    )


def _block(wished: Wishes, block: Block, run: Fraction) -> Strip:
    """The pieces along the selvedge: columns side by side."""
    cuts = []
    for column in block.columns:
        piled = [_pile(wished, column, kind) for kind in dict.fromkeys(kind for kind, *_ in column)]
        base = max(piled, key=lambda cut: cut.along)
        cuts.append(replace(base, above=tuple(cut for cut in piled if cut is not base)))
    return Strip(block.length * wished.unit, run, 1, tuple(cuts), "length")


def _pile(wished: Wishes, column: Sequence[tuple[str, int, int]], kind: str) -> Cut:
    """Like pieces one after the other in a column."""
    like = [piece for piece in column if piece[0] == kind]
    _, length, width = like[0]
    wish = wished.free[int(kind)]
    sides = width * wished.unit, length * wished.unit
    return Cut(wish.letter, *sides, len(like), len(like), wish.use)


def _least(wished: Wishes, answer: Answer) -> Least:
    return Least(
        unit=wished.unit,
        width=answer.task.width,
        kinds=tuple(_priced(kind) for kind in answer.task.kinds),
        prices=tuple(one.kinds for one in answer.prices),
        blocks=tuple(one.block for one in answer.prices),
        bound=answer.by_prices,
        tried=answer.bound > answer.by_prices,
        highest=answer.task.highest,
    )


def _priced(kind: Kind) -> tuple[str, int, int, int, bool, bool]:
    return kind.name, kind.along, kind.across, kind.number, kind.turns, kind.own_width


# ---- pre-cut strips, squares, quarters and panels


def _from_sheets(
    quilt: Quilt, wanted: Wanted, plain: FabricCut, wished: Wishes, style: Style
) -> FabricCut:
    """Fewer pre-cuts, where whole strips of them are not sewn too."""
    laid, rolls = plain.laid, form_of(wanted.fabric).strips
    across, down = laid.cloth.run, laid.cloth.roll if rolls else laid.cloth.deep
    if down is None or (wished.fixed and not rolls):
        return plain
    if laid.cloth.turned:
        across, down = down, across
    asked = tuple(kinds(laid, wished, lengthwise=False))
    answer = solve_sheets(SheetsTask(wished.whole(across), wished.whole(down), asked))
    cut = _rolls if rolls else _squares
    made = cut(quilt, wanted, plain, wished, answer, style)
    if made.plan.number_bound is None:
        return made
    return replace(made, plan=replace(made.plan, least=_least_sheets(wished, answer)))


def _least_sheets(wished: Wishes, answer: SheetsAnswer) -> Least:
    return Least(
        unit=wished.unit,
        width=answer.task.across,
        kinds=tuple(_priced(kind) for kind in answer.task.kinds),
        prices=(answer.prices.kinds,),
        blocks=((0, 0),),
        bound=answer.prices.bound,
        tried=answer.bound > answer.prices.bound,
        down=answer.task.down,
    )


def _bounded(
    made: FabricCut, plain: FabricCut, answer: SheetsAnswer, more: int, style: Style
) -> FabricCut:
    """The plan with its bound, or the plain one where that takes no more pre-cuts."""
    number, bound = answer.number + more, answer.bound + more
    if (plain.plan.buy.number or 0) <= number:
        made, number = plain, plain.plan.buy.number or 0
    proven = bound >= number
    hit = answer.limit_hit and not proven
    plan = replace(made.plan, style=style, number_bound=bound, proven=proven, limit_hit=hit)
    return replace(made, plan=plan)


def _rolls(
    quilt: Quilt,
    wanted: Wanted,
    plain: FabricCut,
    wished: Wishes,
    answer: SheetsAnswer,
    style: Style,
) -> FabricCut:
    """Strips of the roll: each is one piece of cloth, and holds one strip."""
    one_each = all(len(sheet.strips) == 1 and not sheet.turned for sheet in answer.sheets)
    if not one_each:
        return plain
    run = plain.laid.cloth.run
    strips = [
        replace(_strip(wished, sheet.strips[0], run, None), times=sheet.times, width=_roll(plain))
        for sheet in answer.sheets
    ]
    owned = [(", ".join(strip.letters), strip) for strip in strips]
    laid = _spread(plain.laid, wished, owned)
    made = _assembled(quilt, wanted, plain, laid)
    fixed = sum(strip.times for _, strip in wished.fixed)
    return _bounded(made, plain, answer, fixed, style)


def _roll(plain: FabricCut) -> Fraction:
    return plain.laid.cloth.roll or Fraction(0)


def _squares(
    quilt: Quilt,
    wanted: Wanted,
    plain: FabricCut,
    wished: Wishes,
    answer: SheetsAnswer,
    style: Style,
) -> FabricCut:
    """Squares, quarters and panels, each with its own strips."""
    strips: list[Strip] = []
    sheets: list[Sheet] = []
    across, down = answer.task.across * wished.unit, answer.task.down * wished.unit
    for sheet in answer.sheets:
        rows = []
        for laid in sheet.strips:
            rows.append(Row(len(strips), laid.times))
            strip = _strip(wished, laid, down if sheet.turned else across, None)
            strips.append(replace(strip, times=laid.times * sheet.times))
        sheets.append(Sheet(across, down, sheet.times, tuple(rows), sheet.turned))
    owners = {place: ", ".join(strip.letters) for place, strip in enumerate(strips)}
    spread = replace(
        plain.laid, strips=tuple(strips), owners=owners, sheets=tuple(sheets), binding=None
    )
    return _bounded(_assembled(quilt, wanted, plain, spread), plain, answer, 0, style)
