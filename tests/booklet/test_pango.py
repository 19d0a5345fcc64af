"""Without the libraries that lay out text, a booklet ends in words that help, not in a trace."""

import os
import subprocess
import sys

from patternbook.booklet.pango import environment, missing

# No folder holds a library for this process: whatever is asked for is not found.
NOWHERE = """
import cffi, datetime, pathlib, sys

def dlopen(self, name, flags=0):
    raise OSError(f"cannot load library {name!r}: no such file. More advice.")

cffi.FFI.dlopen = dlopen
from patternbook.booklet.pdf import make_pdf
written, told = make_pdf(
    "<html lang=en><title>x</title><h1>x</h1>", {}, base=pathlib.Path("templates"),
    date=None, titles={},
)
assert written == b""
print(*told)
"""


def test_here_nothing_is_missing() -> None:
    assert missing() == ()


def test_a_machine_without_the_libraries_is_told_what_to_install() -> None:
    ran = subprocess.run(
        [sys.executable, "-c", NOWHERE], capture_output=True, text=True, check=True
    )
    assert ran.stderr == ""
    fault, _, help_ = ran.stdout.partition(" On Debian")
    assert fault == (
        "error no-pango: the booklet cannot be laid out: cannot load library 'libgobject-2.0-0'."
    )
    assert "apt-get install -y --no-install-recommends libpango-1.0-0 libpangoft2-1.0-0" in help_
    assert "brew install pango" in help_
    assert "MSYS2" in help_


def test_the_environment_is_put_back() -> None:
    before = dict(os.environ)
    with environment(PATTERNBOOK_TRIAL="1", HOME="elsewhere"):
        assert os.environ["PATTERNBOOK_TRIAL"] == "1"
    assert dict(os.environ) == before
