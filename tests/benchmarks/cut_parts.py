"""What the measuring of cutting plans shows, part by part; each figure beside its bar.

The bars were set from a trial that stopped by the clock; they are kept for limits of work.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Final

from patternbook.cutting.planner.records import Answer, Limits, Manner, Task
from tests.benchmarks.cut_checker import faults, pieces
from tests.benchmarks.cut_lists import cut_lists
from tests.benchmarks.cut_packs import own_sheets, pack_lists, sheet_faults
from tests.benchmarks.cut_patterns import PATTERNS, pattern
from tests.benchmarks.cut_public import public
from tests.benchmarks.cut_rivals import own_strips, packed, shelves
from tests.benchmarks.cut_runs import MANNERS, Ran, lists, run, run_sheets, spent, times
from tests.benchmarks.cut_same import busy_core, elsewhere
from tests.benchmarks.cut_spoilt import SPOILT
from tests.benchmarks.cut_table import Row

# How many of the 120 are proven at least, and what all buy at most.
BARS: Final[dict[Manner, tuple[int, int]]] = {
    "even": (120, 4001),
    "trimmed": (120, 3932),
    "shared": (118, 3905),
    "thrifty": (94, 3890),
}
BEST: Final[tuple[tuple[Manner, int], ...]] = (("shared", 3630), ("thrifty", 3615))
SEEDS: Final = (1, 2, 3)
KITS: Final = 100
SHORTEST: Final = Limits(goal="length", easing=0)
HURRIED: Final = Limits(easing=0)
Held = tuple[bool, int, Counter[str]]


@dataclass(frozen=True)
class Bench:
    """The plans that several parts look at, made once."""

    jobs: int = 1
    folder: Path | None = None

    @cached_property
    def bought(self) -> dict[Manner, list[Ran]]:
        """All lists in every manner, for the least purchase."""
        return {manner: run(lists(manner), Limits(), self.jobs) for manner in MANNERS}

    @cached_property
    def hurried(self) -> list[Ran]:
        """All lists in shared cutting, no easier plan sought."""
        return run(lists("shared"), HURRIED, self.jobs)

    @cached_property
    def shortest(self) -> list[Ran]:
        """All lists in shared cutting, for the least length."""
        return run(lists("shared"), SHORTEST, self.jobs)

    @cached_property
    def across(self) -> dict[Manner, dict[str, Answer]]:
        """The plans of lists that have nothing lengthwise."""
        return {
            manner: {one.name: one.answer for one in ran if not one.answer.task.lengthwise}
            for manner, ran in self.bought.items()
        }


def of_lists(bench: Bench) -> Iterator[Row]:
    """Proven, and how much is bought."""
    for manner, ran in bench.bought.items():
        yield _purchase(manner, ran)
    shared = [one.answer for one in bench.bought["shared"]]
    above = max(one.bought - one.bought_bound for one in shared)
    yield Row("shared: steps above the bound, at most", f"{above}", "<= 1", above <= 1)
    seconds = [one.seconds for one in bench.hurried]
    quick = spent(seconds)
    held = quick.usual <= 0.05 and quick.most <= 0.5 and quick.all <= 20
    yield Row("shared: before an easier plan is sought", "", "0.05, 0.5, all 20", held, seconds)
    by_prices = sum(_by_prices(one) for one in shared)
    yield Row("shared: purchase proven by prices alone", f"{by_prices}/{len(shared)}")
    yield _length(bench.shortest)


def _purchase(manner: Manner, ran: list[Ran]) -> Row:
    least, most = BARS[manner]
    proven = sum(one.answer.proven for one in ran)
    bought = sum(one.answer.bought for one in ran)
    measured = f"{proven}/{len(ran)} proven, {bought} steps"
    held = proven >= least and bought <= most
    seconds = [one.seconds for one in ran]
    return Row(f"{manner}: purchase", measured, f">= {least}, <= {most}", held, seconds)


def _by_prices(answer: Answer) -> bool:
    task = answer.task
    return -(-(answer.by_prices + task.allowance) // task.step) == answer.bought


def _length(ran: list[Ran]) -> Row:
    gaps = [one.answer.length / one.answer.bound - 1 for one in ran]
    proven, mean, worst = gaps.count(0), sum(gaps) / len(gaps), max(gaps)
    return Row(
        "shared: length",
        f"{proven}/{len(ran)} proven, gap {mean:.2%} mean, {worst:.2%} worst",
        ">= 105, 0.15 %, 3 %",
        proven >= 105 and mean <= 0.0015 and worst <= 0.03,
        [one.seconds for one in ran],
    )


def of_checks(bench: Bench) -> Iterator[Row]:
    """Every plan and bound counted again, and spoilt ones refused."""
    ran = [one for each in (*bench.bought.values(), bench.shortest) for one in each]
    wrong = {f"{one.name} {one.answer.task.manner}": faults(one.answer) for one in ran}
    yield _counted("plans and bounds counted again", wrong)
    shared = [one.answer for one in bench.bought["shared"]]
    for way, spoil in SPOILT.items():
        refused = sum(bool(faults(spoil(answer))) for answer in shared)
        # Prices may have slack beside a block of lengthwise pieces: a higher bound is then true.
        least = len(shared) - 2 * (way == "prices 1 % higher")
        bar = f">= {least}"
        yield Row(f"refused: {way}", f"{refused}/{len(shared)}", bar, refused >= least)


def _counted(what: str, wrong: dict[str, list[str]]) -> Row:
    bad = [f"{name}: {said[0]}" for name, said in wrong.items() if said]
    measured = f"{len(wrong) - len(bad)}/{len(wrong)}"
    return Row(what, " ".join((measured, *bad[:1])), "all", not bad)


def of_rivals(bench: Bench) -> Iterator[Row]:
    """What other ways buy of the lists without lengthwise pieces."""
    tasks = {name: task for name, task in cut_lists().items() if not task.lengthwise}
    own = {name: own_strips(task) for name, task in tasks.items()}
    shelved = {name: shelves(task) for name, task in tasks.items()}
    free = {name: packed(task) for name, task in tasks.items()}
    packing = {name: one.length for name, one in free.items()}
    for what, rival in (("own strips", own), ("first-fit shelves", shelved)):
        for manner, _ in BEST:
            yield _beside(f"{what}, {manner}", rival, bench.across[manner], never=True)
    for manner, _ in BEST:
        yield _beside(f"rectpack, {manner}", packing, bench.across[manner], never=False)
    strips = sum(one.stages is not None and one.stages <= 3 for one in free.values())
    never = sum(one.stages is None for one in free.values())
    measured = f"{strips} in up to 3 stages, {never} not straight through at all"
    yield Row(f"rectpack: of {len(free)} plans can be cut", measured)
    for manner, most in BEST:
        total = sum(one.bought for one in bench.across[manner].values())
        yield Row(f"{manner}: steps, {len(tasks)} lists", f"{total}", f"<= {most}", total <= most)


def _beside(what: str, rival: dict[str, int], ours: dict[str, Answer], *, never: bool) -> Row:
    less = same = more = total = 0
    for name, length in rival.items():
        steps = _steps(ours[name].task, length)
        total += steps
        less += ours[name].bought < steps
        same += ours[name].bought == steps
        more += ours[name].bought > steps
    measured = f"{total} steps; ours less {less}, same {same}, more {more}"
    return Row(f"{what} beside", measured, "more 0" if never else "", not more if never else None)


def _steps(task: Task, length: int) -> int:
    return -(-(length + task.allowance) // task.step)


def of_packs(bench: Bench) -> Iterator[Row]:
    """Pre-cut cloth."""
    ran = run_sheets(pack_lists(), bench.jobs)
    proven = sum(one.answer.proven for one in ran)
    above = max(one.answer.number - one.answer.bound for one in ran)
    seconds = [one.seconds for one in ran]
    held = proven >= 34 and above <= 1 and spent(seconds).most <= 0.1
    measured = f"{proven}/{len(ran)} proven, at most {above} above the bound"
    yield Row("pre-cuts", measured, ">= 34, <= 1, 95 % in 0.1 s", held, seconds)
    for what, name in (("quarters", "fq"), ("squares", "ten"), ("strips", "st")):
        some = [one.answer for one in ran if one.name.startswith(name)]
        number, bound = (sum(one.number for one in some), sum(one.bound for one in some))
        own = sum(own_sheets(one.task) for one in some)
        yield Row(f"{what}: number, bound, own", f"{number}, {bound}, {own}")
    wrong = {one.name: sheet_faults(one.answer) for one in ran}
    yield _counted("pre-cut plans and bounds counted again", wrong)


def of_ease(bench: Bench) -> Iterator[Row]:
    """An easier plan that buys the same."""
    hurried = [one.answer for one in bench.hurried]
    eased = [one.answer for one in bench.bought["shared"]]
    pairs = list(zip(hurried, eased, strict=True))
    before, after = sum(map(effort, hurried)), sum(map(effort, eased))
    harder = sum(effort(easy) > effort(first) for first, easy in pairs)
    dearer = sum(easy.bought > first.bought for first, easy in pairs)
    held = not harder and not dearer and after <= 0.93 * before
    measured = f"{before} -> {after} ({after / before - 1:+.1%}), harder {harder}, dearer {dearer}"
    yield Row("effort of the plan", measured, "<= -7 %, 0, 0", held)


def effort(answer: Answer) -> int:
    """What a cutter has to mind: 10 for each strip cut alike, 4 more where it holds several kinds,
    5 for each width of strip, 2 for each strip. The last strips, which hold less of the same, are
    none of their own."""
    each = [strip._replace(times=1) for strip in answer.strips]
    cut = [(one.beside, one.height, pieces((one,))) for one in each]
    own = [one for one in cut if not any(_holds_less(one, other) for other in cut)]
    mixed = sum(len(one[2]) > 1 for one in own)
    widths = len({one[:2] for one in cut})
    strips = sum(strip.times for strip in answer.strips)
    return 10 * len(own) + 4 * mixed + 5 * widths + 2 * strips


def _holds_less(one: Held, other: Held) -> bool:
    return one[:2] == other[:2] and one[2] < other[2]


def of_public(bench: Bench) -> Iterator[Row]:
    """The public lists, trimmed, for the least length."""
    if bench.folder is None:
        yield Row("public lists", "not given")
        return
    known = public(bench.folder)
    limits = Limits(goal="length", patterns=20_000)
    ran = run({name: task for name, (task, _) in known.items()}, limits, bench.jobs)
    good = [one.answer.length == one.answer.bound == known[one.name][1] for one in ran]
    valid = [not faults(one.answer) for one in ran]
    seconds = [one.seconds for one in ran]
    held = all(good) and all(valid) and max(seconds) <= 10
    off = ", ".join(one.name for one, well in zip(ran, good, strict=True) if not well)
    measured = f"{sum(good)}/{len(good)} proven and equal, {sum(valid)} valid {off}".strip()
    yield Row("public lists", measured, "24, 24, 10 s", held, seconds)


def of_patterns(_: Bench) -> Iterator[Row]:
    """Every fabric of every size of the patterns, in both planned styles."""
    every = [pattern(path) for path in PATTERNS]
    for one in every:
        proven = sum(fabric.proven for fabric in one.fabrics)
        open_ = [fabric for fabric in one.fabrics if not fabric.proven]
        worst = max(open_, key=lambda fabric: fabric.gap, default=None)
        gap = f", {worst.where} within {float(worst.gap):.2%}" if worst else ""
        yield Row(one.name, f"{proven}/{len(one.fabrics)} proven{gap}", seconds=one.seconds)
    fabrics = [fabric for one in every for fabric in one.fabrics]
    proven = sum(fabric.proven for fabric in fabrics)
    seconds = [second for one in every for second in one.seconds]
    yield Row("all patterns, a size", f"{proven}/{len(fabrics)} proven", seconds=seconds)


def of_kits(bench: Bench) -> Iterator[Row]:
    """A king-size quilt, and a hundred kits of it."""
    kings = {name: task for name, task in lists("shared").items() if name.endswith("-king")}
    for number in (1, KITS):
        ran = run({n: times(task, number) for n, task in kings.items()}, Limits(), bench.jobs)
        proven = sum(one.answer.proven for one in ran)
        valid = sum(not faults(one.answer) for one in ran)
        seconds = [one.seconds for one in ran]
        held = valid == len(ran) and max(seconds) <= 2
        measured = f"{proven}/{len(ran)} proven, {valid} valid"
        yield Row(f"{number} of each king", measured, "all valid, 2 s", held, seconds)


def of_same(_: Bench) -> Iterator[Row]:
    """The same plans on a slow machine, and whatever the order of kinds and sets."""
    names = list(cut_lists())
    each = {elsewhere(seed, names) for seed in SEEDS}
    yield Row("digests under three seeds", f"{len(each)}", "1", len(each) == 1)
    with busy_core():
        slow = elsewhere(SEEDS[0], names, slow=True)
    yield Row("and on a third of a core", f"{len(each | {slow})}", "1", {slow} == each)


PARTS: Final = {
    "lists": of_lists,
    "checks": of_checks,
    "rivals": of_rivals,
    "packs": of_packs,
    "ease": of_ease,
    "public": of_public,
    "patterns": of_patterns,
    "kits": of_kits,
    "same": of_same,
}


def rows(bench: Bench, parts: Sequence[str]) -> Iterable[Row]:
    """The lines of some parts, a heading before each."""
    for part in parts:
        yield Row(f"-- {part}", "")
        yield from PARTS[part](bench)
