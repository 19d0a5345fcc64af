"""How a binding is made and sewn on: strips or bias, double or single, square corners or round."""

from __future__ import annotations

from patternbook.booklet import wording
from patternbook.cutting.records import BindingPlan
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Binding


def made(known: Evidence) -> str:
    """From the cloth to one folded length."""
    plan, asked = known.cutting.binding, known.quilt.binding
    if plan is None or asked is None:
        return ""
    seam = wording.length(known.quilt.seam, known.quilt.system)
    told = (_bias(plan, asked, seam, known.quilt.system), _joined(plan, seam), _folded(asked))
    return " ".join(filter(None, told))


def sewn_on(known: Evidence) -> str:
    """Round the quilt, to the last stitch."""
    plan, asked = known.cutting.binding, known.quilt.binding
    if plan is None or asked is None:
        return ""
    seam = wording.length(known.quilt.seam, known.quilt.system)
    told = (
        _sewn_on(plan, asked, seam),
        _closed(plan, seam, known.quilt.system),
        _turned(asked, seam),
    )
    return " ".join(told)


def choices(known: Evidence) -> tuple[object, ...]:
    """What the words depend on: sizes that are bound alike are told together."""
    plan, asked = known.cutting.binding, known.quilt.binding
    if plan is None or asked is None:
        return ()
    bias = asked.bias_from if plan.square else None
    return asked.cut, asked.fold, plan.join, bias, plan.radius is not None


def joins(known: Evidence) -> int:
    """How many seams make it one length: the size that has them speaks for those that have none."""
    return known.cutting.binding.joins if known.cutting.binding else 0


def _bias(plan: BindingPlan, asked: Binding, seam: str, system: System) -> str:
    """From the square to one long strip, or to strips."""
    if plan.square is None:
        return ""
    wide = wording.length(plan.cut, system)
    if asked.bias_from == "strips":
        return (
            f"Cut each square on its diagonal, then strips {wide} wide side by side along that "
            "cut, in both halves. Bias stretches: handle it little, and do not pull."
        )
    return (
        "Cut each square on its diagonal. Lay the halves right sides together so that two short "
        f"sides are level and the points stick out by {seam}, sew {seam} and press open: it is a "
        f"slanted shape. On the wrong side draw lines {wide} apart along the long bias edges. Sew "
        "the other two short sides to a tube, moved on by one line, so that each line runs into "
        "the next. Cut along the line, round and round, with scissors."
    )


def _joined(plan: BindingPlan, seam: str) -> str:
    """The joins between strips, or between the lengths of two squares."""
    if not plan.joins:
        return ""
    if plan.bias_strips:
        if plan.join == "diagonal":
            return (
                "Join the strips end to end: lay two slanted ends right sides together so that "
                f"they cross {seam} from the edge, sew {seam} and press open."
            )
        return "Cut the ends square and join them with straight seams, pressed open."
    if plan.join == "diagonal":
        return (
            "Lay the ends of two strips at right angles, right sides together, sew from corner to "
            f"corner, trim to {seam} and press open; so on for all strips."
        )
    return "Join the strips end to end with straight seams and press them open."


def _folded(asked: Binding) -> str:
    if asked.fold == "double":
        return "Fold the strip in half along its length, wrong sides together, and press."
    return ""


def _sewn_on(plan: BindingPlan, asked: Binding, seam: str) -> str:
    """Along the sides and at the corners."""
    edges = "raw edges" if asked.fold == "double" else "one raw edge"
    begun = (
        f"Begin in the middle of a side, the first hand's breadth left free, {edges} level with "
        f"the quilt's front, and sew with a {seam} seam."
    )
    if plan.radius is not None:
        return f"{begun} Lay it round each corner without pulling or pleating."
    return (
        f"{begun} At each corner stop {seam} before the edge, fold the strip up and down again, "
        "and go on."
    )


def _closed(plan: BindingPlan, seam: str, system: System) -> str:
    """The two ends made one."""
    lies = wording.length(plan.overlap, system)
    end = f"Stop a hand's breadth short; cut the end so that it overlaps the beginning by {lies}"
    if plan.join == "diagonal":
        return f"{end}, join the two on the diagonal as before and sew the rest."
    return f"{end}, join the two with a straight {seam} seam and sew the rest."


def _turned(asked: Binding, seam: str) -> str:
    if asked.fold == "double":
        return "Turn the fold to the back and sew it down."
    return f"Turn it to the back, the other raw edge {seam} under, and sew it down."
