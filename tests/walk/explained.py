"""Changes that nobody is told of and no figure shows, each with its reason."""

from tests.walk.changes import Change

ABOUT = "either eighth beside the exact size is about so much; the exact size is printed"
PANEL = "the panel may be a little smaller, where both its figures say so: its frame takes it up"
# (pattern, key of a number) -> why a change of it, with its like, may go unseen.
EXPLAINED: dict[tuple[str, str], str] = {
    ("learned-by-spring", "pieces.T.count"): (
        "(across + 2) * (down + 0) is (across + 1) * (down + 1) where down is across + 1"
    ),
    ("wash-house-tiles", "pieces.P.count"): (
        "(across - 0) * (down - 2) is (across - 1) * (down - 1) where down is across + 1"
    ),
    ("one-good-picture", "units.centre.before-borders"): PANEL,
    ("one-good-picture", "pieces.P.cut"): PANEL,
}


def reason(pattern: str, change: Change) -> str | None:
    """Why a change may go unseen, if all of its numbers may."""
    found = [
        ABOUT if number.about else EXPLAINED.get((pattern, number.key)) for number in change.news
    ]
    return found[0] if all(found) else None
