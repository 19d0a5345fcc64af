"""The finished words of every booklet keep the rules that the author's own sentences are held to:
a count never beside a size, one unit a number, marks that a ruler has, no abbreviation, and one
term for one thing."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from patternbook.booklet.book import Book
from patternbook.booklet.html import html, text
from patternbook.edition.pipeline import examine
from patternbook.notice import Notice, Place
from patternbook.proof.prose.notation import notation
from patternbook.proof.prose.sayings import Saying
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.terms import terms
from patternbook.value import Text
from tests.support import ROOT

PATTERNS = sorted((ROOT / "patterns").glob("*/pattern.yaml"))
BREAKS = re.compile(
    r"</?(?:p|li|td|th|h[1-6]|div|dt|dd|figcaption|section|tr|[uo]l|table|br)\b[^>]*>"
)
NO_WORDS = re.compile(r"<(svg|style|script)\b.*?</\1>", re.DOTALL)
# The glossary alone gives the other name, where English speakers differ.
GLOSSARY = re.compile(r"^[A-Z][a-z -]+\. .*\((?:UK|US|also): ")


def sentences(markup: str) -> Iterator[str]:
    """The words of a page, block by block, each once."""
    body = NO_WORDS.sub(" ", markup[markup.index("<body") :])
    blocks = (" ".join(text(block).split()) for block in BREAKS.sub("\x00", body).split("\x00"))
    yield from dict.fromkeys(block for block in blocks if block and not GLOSSARY.match(block))


def faults(words: str, known: tuple[Facts, ...]) -> list[Notice]:
    """What the rules of form say of them."""
    speech = Speech(Saying(Text(words, Place("booklet", 1, 1, 1, len(words) + 1))), [words])
    formed = [notice for notice, _ in notation(speech, known) if notice is not None]
    return [*formed, *terms(speech, [facts.known for facts in known])]


@pytest.mark.parametrize("path", PATTERNS, ids=lambda path: path.parent.name)
def test_the_words_of_the_booklet(path: Path) -> None:
    examined = examine(path, "pattern.yaml")
    assert examined.heading is not None
    known = tuple(Facts(one) for one in examined.sizes.values())
    page = html(Book(examined.heading, examined.sizes, {}, "a4")).html
    words = tuple(sentences(page))
    assert len(words) > 50
    assert [(one.code, one.stated, said) for said in words for one in faults(said, known)] == []


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ("Cut 4 2½″ squares.", "count-beside-size"),
        ("Buy 5/8″ yard.", "two-units"),
        ("Sew ⅓″ seams.", "said-off-ruler"),
        ("Cut 6 WOF strips.", "unknown-abbreviation"),
        ("Lay the wadding flat.", "other-word"),
    ],
)
def test_a_booklet_that_broke_a_rule_would_be_told(words: str, code: str) -> None:
    examined = examine(PATTERNS[0], "pattern.yaml")
    known = tuple(Facts(one) for one in examined.sizes.values())
    assert code in [one.code for one in faults(words, known)]
