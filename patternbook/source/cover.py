"""What is written round the quilt itself: sizes, house rules, words, and what was changed when."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, ClassVar

from pydantic import ConfigDict

from patternbook.methods.fields import (
    Count,
    Day,
    Line,
    MetreStep,
    More,
    Percent,
    Sentences,
    Size,
    Whole,
    YardStep,
)
from patternbook.methods.reading import Several, choice
from patternbook.methods.written import WrittenNode, hyphenated
from patternbook.value import Text, WholeValue

Joins = Annotated[Text, choice("counted", "not counted")]
Cutting = Annotated[Text, choice("plain", "shared", "thrifty")]


class WrittenSettings(WrittenNode):
    """House rules. What is not stated here is the trade's usual, in the pattern's own measure."""

    called: ClassVar = "the settings"
    spare: More | None = None
    straightening: More | None = None
    yard_step: YardStep | None = None
    backing_step: YardStep | None = None
    metre_step: MetreStep | None = None
    trimming: More | None = None
    binding_over: More | None = None
    joins: Joins | None = None
    drift: More | None = None
    cutting: Cutting = Text("plain")
    shrinkage: Percent | None = None
    advice: Several[Line] = ()


class WrittenSize(WrittenNode):
    """A size: how large it finishes, of how many pieces, and any whole numbers of its own."""

    called: ClassVar = "a size"
    model_config = ConfigDict(
        extra="allow",
        frozen=True,
        alias_generator=hyphenated,
        validate_by_alias=True,
        arbitrary_types_allowed=True,
    )
    __pydantic_extra__: dict[str, Whole]
    finished: Size | None = None
    pieces: Count | None = None

    @property
    def numbers(self) -> Mapping[str, WholeValue]:
        """Its own numbers, by name."""
        return self.__pydantic_extra__


class WrittenWords(WrittenNode):
    """Her own sentences, chapter by chapter."""

    called: ClassVar = "the words"
    welcome: Sentences | None = None
    cutting: Sentences | None = None
    sewing: Sentences | None = None
    quilting: Sentences | None = None
    finishing: Sentences | None = None
    care: Sentences | None = None


class WrittenRevision(WrittenNode):
    """Why the pattern was changed, and what to do for those who have begun."""

    called: ClassVar = "a revision"
    number: Whole
    date: Day
    why: Sentences
    if_cut: Sentences | None = None
    if_sewn: Sentences | None = None
    was: Sentences | None = None


class WrittenPhoto(WrittenNode):
    """A picture of the real quilt, and what it shows for those who cannot see it."""

    called: ClassVar = "a photo"
    file: Line
    alt: Sentences


class WrittenIssue(WrittenNode):
    """Which booklets are made of the pattern."""

    called: ClassVar = "`issue-as`"
    editions: Several[Line] = ()
    papers: Several[Line] = ()
    appendices: Several[Line] = ()
