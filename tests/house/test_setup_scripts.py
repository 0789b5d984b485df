"""The set-up scripts say what is missing, install only that, and fail in one sentence."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
SETUP = REPOSITORY / "app/setup_environment.sh"

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="the scripts are for Debian")


class Machine:
    """A pretended machine: a PATH of its own with stand-ins that note how they are called."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.bin = folder / "bin"
        self.bin.mkdir()
        for tool in ("sh", "cat", "sha256sum", "env", "dirname", "mkdir", "true"):
            found = shutil.which(tool)
            assert found, tool
            (self.bin / tool).symlink_to(found)
        self.program("id", "echo 1000")

    def program(self, name: str, script: str = ":") -> None:
        path = self.bin / name
        path.write_text(f'#!/bin/sh\necho "{name} $*" >>"{self.folder}/calls"\n{script}\n')
        path.chmod(0o755)

    def installed_packages(self, *names: str) -> None:
        known = "|".join(names) or "none"
        self.program(
            "dpkg-query",
            f'case "$4" in {known}) printf "install ok installed" ;; *) exit 1 ;; esac',
        )

    def run(self, command: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            ["sh", "-eu", "-c", f'. "{SETUP}"; {command}'],
            env={"PATH": str(self.bin), "HOME": str(self.folder)},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            timeout=30,
            check=False,
        )

    @property
    def calls(self) -> list[str]:
        path = self.folder / "calls"
        return path.read_text().splitlines() if path.exists() else []

    def calls_of(self, name: str) -> list[str]:
        return [call for call in self.calls if call.split()[0] == name]


@pytest.fixture
def machine(tmp_path):
    return Machine(tmp_path)


def assert_one_sentence(done, *words):
    assert done.returncode == 2, done
    lines = done.stderr.strip().splitlines()
    assert len(lines) == 1, lines
    for word in words:
        assert word in lines[0]


def test_only_what_is_missing_is_installed_after_it_was_named(machine):
    machine.installed_packages("libegl1")
    machine.program("apt-get")
    machine.program("sudo", '"$@"')
    done = machine.run("install_system_packages libegl1 libportaudio2 xvfb")
    assert done.returncode == 0, done
    assert done.stdout.splitlines()[0].endswith("apt-get: libportaudio2 xvfb")
    installs = [call for call in machine.calls_of("apt-get") if " install " in call]
    assert len(installs) == 1
    assert installs[0].endswith(" libportaudio2 xvfb")
    assert "libegl1" not in installs[0]
    assert [call.split()[1] for call in machine.calls_of("sudo")] == ["true", "apt-get", "env"]


def test_root_needs_no_sudo(machine):
    machine.installed_packages()
    machine.program("apt-get")
    machine.program("id", "echo 0")
    assert machine.run("install_system_packages xvfb").returncode == 0
    assert len(machine.calls_of("apt-get")) == 2


def test_nothing_missing_leaves_apt_alone(machine):
    machine.installed_packages("libegl1", "xvfb")
    machine.program("apt-get")
    assert machine.run("install_system_packages libegl1 xvfb").returncode == 0
    assert not machine.calls_of("apt-get")


def test_a_removed_package_counts_as_missing(machine):
    machine.program("dpkg-query", 'printf "deinstall ok config-files"')
    machine.program("apt-get")
    machine.program("id", "echo 0")
    assert "xvfb" in machine.run("install_system_packages xvfb").stdout


def test_no_apt_is_said_in_one_sentence(machine):
    assert_one_sentence(machine.run("install_system_packages xvfb"), "apt-get", "pip install .")


def test_no_sudo_is_said_with_the_command_to_run(machine):
    machine.installed_packages()
    machine.program("apt-get")
    done = machine.run("install_system_packages xvfb xauth")
    assert_one_sentence(done, "apt-get install xvfb xauth", "root")


def test_a_user_who_may_not_use_sudo_is_told_whom_to_ask(machine):
    machine.installed_packages()
    machine.program("apt-get")
    machine.program("sudo", "exit 1")
    assert_one_sentence(machine.run("install_system_packages xvfb"), "apt-get install xvfb", "sudo")
    assert not machine.calls_of("apt-get")


def test_no_network_is_said_in_one_sentence(machine):
    machine.installed_packages()
    machine.program("id", "echo 0")
    machine.program("apt-get", "exit 100")
    assert_one_sentence(machine.run("install_system_packages xvfb"), "network")


def test_other_systems_may_bring_their_own_libraries(machine):
    done = machine.run("PASSAGEWORK_SKIP_SYSTEM_PACKAGES=1; install_system_packages xvfb")
    assert done.returncode == 0


def test_no_python_is_said_in_one_sentence(machine):
    assert_one_sentence(machine.run("check_python"), "python3", "3.11")


def test_an_old_python_is_said_in_one_sentence(machine):
    machine.program("python3", 'case "$1" in -V) echo Python 3.9.2 ;; *) exit 1 ;; esac')
    assert_one_sentence(machine.run("check_python"), "3.9.2", "3.11")


def test_no_venv_module_is_said_in_one_sentence(machine):
    machine.program("python3", 'case "$2" in *ensurepip*) exit 1 ;; *) exit 0 ;; esac')
    assert_one_sentence(machine.run("check_python"), "python3-venv")


@pytest.fixture
def checkout(machine):
    for name in ("requirements.lock", "build.lock", "pyproject.toml"):
        (machine.folder / name).write_text(name)
    # A stand-in for Python that makes an environment around itself.
    machine.program(
        "python3",
        'if [ "$2" = venv ]; then\n'
        '  for last; do :; done; mkdir -p "$last/bin"\n'
        f'  cat "{machine.bin}/python3" >"$last/bin/python"; /bin/chmod +x "$last/bin/python"\n'
        "fi",
    )
    return machine


MAKE = 'make_environment "$HOME" requirements.lock'


def test_the_environment_is_made_from_the_lock_with_hashes(checkout):
    done = checkout.run(MAKE)
    assert done.returncode == 0, done
    pip = [call for call in checkout.calls if " pip install " in call]
    assert "--require-hashes" in pip[0]
    assert "requirements.lock" in pip[0]
    assert "--no-deps" in pip[1]


def test_a_second_run_does_nothing(checkout):
    checkout.run(MAKE)
    before = len(checkout.calls)
    done = checkout.run(MAKE)
    assert (done.returncode, done.stdout) == (0, "")
    assert len(checkout.calls) == before


@pytest.mark.parametrize("changed", ["requirements.lock", "build.lock", "pyproject.toml"])
def test_a_changed_lock_is_installed_again(checkout, changed):
    checkout.run(MAKE)
    before = len(checkout.calls)
    (checkout.folder / changed).write_text("newer")
    checkout.run(MAKE)
    assert len(checkout.calls) > before


def test_a_failed_installation_is_tried_again_next_time(checkout):
    checkout.run(MAKE)
    python = checkout.folder / ".venv/bin/python"
    python.write_text('#!/bin/sh\n[ "$3" != install ]\n')
    (checkout.folder / "requirements.lock").write_text("newer")
    assert_one_sentence(checkout.run(MAKE), "pip", "network")
    assert_one_sentence(checkout.run(MAKE), "pip", "network")


@pytest.mark.parametrize("script", ["app/run.sh", "app/setup_environment.sh", "tests/run.sh"])
def test_scripts_are_plain_sh(script):
    shell = shutil.which("dash") or "sh"
    done = subprocess.run([shell, "-n", str(REPOSITORY / script)], check=False)
    assert done.returncode == 0


def test_every_entry_script_may_be_executed():
    for name in ("app/run.sh", "tests/run.sh", ".ci/run"):
        assert os.access(REPOSITORY / name, os.X_OK), name
    assert "sh tests/run.sh" in (REPOSITORY / ".ci/run").read_text(encoding="utf-8")
