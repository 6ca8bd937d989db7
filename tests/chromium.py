"""The browser the tests run in: the machine's own Chromium, else the distribution's package.

`python -m tests.chromium` finds or installs it, and prints one clear line when it can do neither.
"""

import os
import shutil
import subprocess
import sys

# The shell is the same engine without a window to draw, and takes half the processor time for the same tests.
NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]
APT = ("apt-get", "install", "-q", "-y", "--no-install-recommends", "fonts-dejavu-core")
# Tried in order until a browser is there: not every distribution packs the shell by itself.
INSTALLERS = (
    (("apt-get", "update", "-q"), (*APT, "chromium-headless-shell"), (*APT, "chromium")),
    (("dnf", "install", "-q", "-y", "chromium-headless"), ("dnf", "install", "-q", "-y", "chromium")),
    (("apk", "add", "--quiet", "chromium"),),
)


def find() -> str | None:
    """Path of the Chromium named in SWARDBOOK_CHROMIUM, else of the first one on PATH; None when there is none."""
    named = os.environ.get("SWARDBOOK_CHROMIUM")
    found = (shutil.which(name) for name in ([named] if named else NAMES))
    return next((path for path in found if path), None)


def missing() -> str:
    """The one line for a machine without a browser."""
    named = os.environ.get("SWARDBOOK_CHROMIUM")
    looked_for = f"SWARDBOOK_CHROMIUM={named}" if named else ", ".join(NAMES)
    return f"no Chromium found ({looked_for}); install chromium, or name one in SWARDBOOK_CHROMIUM"


def install() -> None:
    """Install the distribution's package, as root or through a sudo that asks for no password."""
    sudo = [] if os.geteuid() == 0 else ["sudo", "-n"]
    if sudo and not shutil.which("sudo"):
        return
    for commands in INSTALLERS:
        if shutil.which(commands[0][0]):
            for command in commands:
                if find() is None:
                    subprocess.run([*sudo, *command], check=False, stdout=subprocess.DEVNULL)
            return


def main() -> int:
    if find() is None and "SWARDBOOK_CHROMIUM" not in os.environ:
        print("no Chromium here yet: installing the distribution's package", flush=True)
        install()
    path = find()
    print(path if path else missing(), file=sys.stdout if path else sys.stderr)
    return 0 if path else 1


if __name__ == "__main__":
    raise SystemExit(main())
