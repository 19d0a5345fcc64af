"""The sewing methods, one file each: what is written of them, what they measure, what they use."""

from __future__ import annotations

from typing import Final

from patternbook.methods import (
    applique,
    courthouse_steps,
    curved_seam,
    cut_apart,
    flying_geese,
    half_rectangle_triangles,
    half_square_triangles,
    layout,
    log_cabin,
    quarter_square_triangles,
    snowball_corners,
    square_in_a_square,
    strip_race,
    strip_set,
)
from patternbook.methods.form import MethodForm
from patternbook.methods.world import Work

METHODS: Final[tuple[MethodForm, ...]] = (
    layout.METHOD,
    strip_set.METHOD,
    half_square_triangles.METHOD,
    quarter_square_triangles.METHOD,
    half_rectangle_triangles.METHOD,
    flying_geese.METHOD,
    square_in_a_square.METHOD,
    snowball_corners.METHOD,
    log_cabin.METHOD,
    courthouse_steps.METHOD,
    curved_seam.METHOD,
    applique.METHOD,
    cut_apart.METHOD,
    strip_race.METHOD,
)
by_name: Final = {method.name: method for method in METHODS}


def work_of(method: str) -> Work:
    """How a method is worked out; KeyError where the reader knows no such method."""
    return by_name[method].work
