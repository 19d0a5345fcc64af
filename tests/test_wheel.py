"""The wheel carries what is tracked and nothing else, and works alone with the network off."""

import os
import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

from patternbook.commands.build import DEMOS
from tests.support import ROOT

# Any attempt to reach out is a failure; loaded in the fresh environment at every start.
NO_NETWORK = """
import sys
def refuse(event, details):
    if event in {"socket.connect", "socket.getaddrinfo", "socket.gethostbyname"}:
        raise RuntimeError(f"the network was asked for: {event} {details}")
sys.addaudithook(refuse)
"""


def tracked(*folders: str) -> set[str]:
    """The files of a folder that git knows, or would take at the next `git add`."""
    listed = subprocess.run(
        ["git", "-c", "safe.directory=*", "ls-files", "-z", "-co", "--exclude-standard", *folders],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    return {name for name in listed.stdout.split("\0") if name and (ROOT / name).exists()}


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from this checkout without the network."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A fresh environment holding the wheel; only the libraries are borrowed from ours."""
    home = tmp_path_factory.mktemp("fresh")
    venv.create(home, with_pip=False, symlinks=True)
    python = home / "bin" / "python"
    command = ["-m", "pip", "--python", str(python), "install", "--no-deps", "--no-index", "-q"]
    subprocess.run([sys.executable, *command, str(wheel)], check=True, capture_output=True)
    (packages,) = home.glob("lib/python*/site-packages")
    # A path named here is searched, but the checkout that *its* .pth files name is not.
    (packages / "libraries.pth").write_text(sysconfig.get_path("purelib") + "\n")
    (packages / "no_network.py").write_text(NO_NETWORK)
    (packages / "no_network.pth").write_text("import no_network\n")
    return python


def alone(python: Path, folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Runs the installed command in an empty folder, with no way to the network."""
    unshared = ["unshare", "--net", "--map-root-user"]
    can = subprocess.run([*unshared, "true"], capture_output=True, check=False).returncode == 0
    return subprocess.run(
        [*(unshared if can else []), str(python), "-m", "patternbook", *words],
        cwd=folder, capture_output=True, text=True, check=False,
        env={"HOME": str(folder), "PATH": os.defpath},
    )  # fmt: skip


def test_wheel_carries_what_is_tracked(wheel: Path) -> None:
    """Also fails when templates/ or patterns/ is missing: their names would be, too."""
    carried = {n for n in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in n}
    folders = {name: tracked(name) for name in ("patternbook", "templates", "patterns")}
    assert all(folders.values())
    inner = {f"patternbook/{name}" for name in folders["templates"] | folders["patterns"]}
    assert carried == folders["patternbook"] | inner


def test_installed_wheel_is_the_one_that_runs(installed: Path, tmp_path: Path) -> None:
    code = "import patternbook, sys; sys.stdout.write(patternbook.__file__)"
    found = subprocess.run(
        [str(installed), "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert Path(found.stdout).is_relative_to(installed.parent.parent)


def test_the_guard_against_the_network_holds(installed: Path, tmp_path: Path) -> None:
    code = "import socket; socket.create_connection(('127.0.0.1', 9))"
    tried = subprocess.run(
        [str(installed), "-c", code], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert "the network was asked for" in tried.stderr


def test_installed_wheel_builds_the_demos_offline(installed: Path, tmp_path: Path) -> None:
    built = alone(installed, tmp_path, "build", "--demo")
    assert built.returncode == 0, built.stderr
    made = sorted(path.parent.name for path in tmp_path.glob("build/*/*.pdf"))
    assert made == sorted(DEMOS * 2), "each demonstration on two papers"
