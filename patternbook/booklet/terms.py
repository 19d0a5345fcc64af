"""The trade's terms in plain words, with the other name where English speakers differ."""

from __future__ import annotations

from typing import Final, NamedTuple


class Term(NamedTuple):
    """A term, what it means, and the pattern by which it is found in a text."""

    name: str
    means: str
    pattern: str


TERMS: Final = (
    Term("backing", "the fabric on the underside of the quilt", "backing"),
    Term(
        "baste", "to pin or stitch the three layers together for a time (UK: tack)", "bast(?:e|ing)"
    ),
    Term("batting", "the soft layer inside the quilt (UK: wadding)", "batting"),
    Term("bias", "the slanting direction of a cloth, in which it stretches", "bias"),
    Term("binding", "the strip that closes the edge of the quilt", "binding"),
    Term("border", "a frame of strips round the quilt", "borders?"),
    Term(
        "chain piecing",
        "sewing pairs one behind the other without cutting the thread",
        "chain piecing",
    ),
    Term("cornerstone", "the small square where sashes cross", "cornerstones?"),
    Term("ease", "to take up a little fullness evenly between pins", "eas(?:e|ing)"),
    Term("finished", "the size of a part once it is sewn in on all sides", "finished"),
    Term("ground", "the fabric that the figure lies on (also: background)", "ground"),
    Term("nest", "of two seams pressed opposite ways: to lie snugly against one another", "nest"),
    Term("pre-cut", "sold cut to size, as strips or squares", "pre-cut|strip roll"),
    Term("right side", "the printed side of a fabric", "right sides?"),
    Term("sash", "a strip between blocks", "sash(?:es|ing)?"),
    Term("seam allowance", "the cloth between the seam and the raw edge", "seam allowances?"),
    Term("selvedge", "the firm woven edge of a fabric; never sewn in (US: selvage)", "selvedges?"),
    Term("slice", "a piece cut across a strip set", "slices?"),
    Term("strip set", "strips sewn together along their long edges", "strip sets?|sets"),
    Term("usable width", "the width of a fabric without its selvedges", "usable width"),
    Term("walking foot", "a foot that feeds all layers evenly", "walking foot"),
    Term("width of fabric", "from selvedge to selvedge", "width of fabric"),
)
