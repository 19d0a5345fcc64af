"""What is bought of cloth whose print has one way up, where the pattern is planned for any."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

from patternbook.cutting.fabric import Wanted, cut_fabric
from patternbook.cutting.records import FabricPlan
from patternbook.methods.made import Turn
from patternbook.quilt.place import lying
from patternbook.quilt.records import Piece, Quilt


def one_way(quilt: Quilt, wanted: Wanted, plan: FabricPlan) -> Fraction | None:
    """The amount with every patch cut so that its print stands upright in the quilt, by plain
    cutting; None where the cloth is one-way already, or nothing but strips comes off it."""
    fabric = wanted.fabric
    patches = any(not piece.is_strip for host, guests in wanted.hosts for piece in (host, *guests))
    if fabric.one_way or plan.buy.amount is None or quilt.top is None or not patches:
        return None
    ways = Counter(
        (patch.letter, patch.turn.sideways) for patch in lying(quilt.units, quilt.top, Turn())
    )

    def turned(piece: Piece) -> Piece:
        return replace(piece, sideways=ways[piece.letter, True] > ways[piece.letter, False])

    hosts = tuple((turned(host), tuple(map(turned, guests))) for host, guests in wanted.hosts)
    cut = cut_fabric(quilt, replace(wanted, fabric=replace(fabric, one_way=True), hosts=hosts))
    if any(group.unlaid or group.too_long for group in cut.laid.groups):
        return None
    return cut.plan.buy.amount
