"""Progress shows on a terminal only."""

import io

from patternbook.commands.progress import WIPE, Progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_on_a_terminal_one_line_is_written_over_and_wiped() -> None:
    screen = Terminal()
    with Progress(quiet=False, stream=screen) as progress:
        progress.step("checking a", 1, 2)
        progress.step("checking b", 2, 2)
    assert screen.getvalue() == f"{WIPE}1 of 2: checking a{WIPE}2 of 2: checking b{WIPE}"


def test_not_in_a_pipe_and_not_when_quiet() -> None:
    for stream, quiet in ((io.StringIO(), False), (Terminal(), True)):
        with Progress(quiet=quiet, stream=stream) as progress:
            progress.step("checking a")
        assert stream.getvalue() == ""
