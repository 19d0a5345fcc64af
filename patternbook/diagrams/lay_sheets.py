"""Pre-cut squares, quarters and panels with their strips as they lie in them."""

from __future__ import annotations

from typing import Final

from patternbook.cutting.records import FabricPlan, Sheet
from patternbook.diagrams import labels, words
from patternbook.diagrams.lay_groups import Said, told_of_sheet
from patternbook.diagrams.lay_pieces import lying, piece, upright
from patternbook.diagrams.lay_words import edge, said
from patternbook.diagrams.pattern import Size
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.tones import WASTE

AIR: Final = 19.0  # points between them


def draw_sheets(pen: Pen, size: Size, fabric: str, plan: FabricPlan) -> None:
    """Each kind of them once, one below the other."""
    y = 0.0
    for number, sheet in enumerate(plan.sheets, start=1):
        y = _sheet(pen, size, fabric, plan, sheet, number, y)


def _sheet(
    pen: Pen, size: Size, fabric: str, plan: FabricPlan, sheet: Sheet, number: int, y: float
) -> float:
    """One pre-cut piece of cloth with its strips as they lie in it."""
    across, down = float(sheet.across), float(sheet.down)
    fill = size.cloths.fabric(fabric, number)
    if sheet.times > 1:
        edge(pen, 0, y + down, across)
    pen.rectangle(0, y, across, down, WASTE, "edge")
    far = 0.0
    lines = [Said(f"× {sheet.times}", heavy=True), *told_of_sheet(size, plan, sheet)]
    for row in sheet.rows:
        one = plan.strips[row.strip]
        for _ in range(row.times):
            lies = lying(one, plan.form, fill, 0, y + far)
            for patch in upright(one, fill, far, y) if sheet.turned else lies:
                piece(pen, size, patch)
            far += float(one.width)
    count(pen, -pen.pt(12), y + down / 2, number, size=8)
    text = words.size(sheet.across, sheet.down, size.system)
    pen.label(0, y - pen.pt(7), text, 8, anchor="start")
    beside = max(across, pen.text_width(text, 8)) + pen.pt(9)
    said(pen, size.system, lines, beside, y + down / 2)
    return y + max(down, pen.pt(labels.LINE * len(lines))) + pen.pt(AIR)
