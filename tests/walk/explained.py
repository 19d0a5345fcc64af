"""Changes that nobody is told of and no figure shows, each with its reason."""

from tests.walk.changes import Change

ABOUT = "either eighth beside the exact size is about so much; the exact size is printed"
# (pattern, key of a number) -> why nothing that is printed rests on it. There is none.
EXPLAINED: dict[tuple[str, str], str] = {}


def reason(pattern: str, change: Change) -> str | None:
    """Why a change may go unseen, if all of its numbers may."""
    found = [
        ABOUT if number.about else EXPLAINED.get((pattern, number.key)) for number in change.news
    ]
    return found[0] if all(found) else None
