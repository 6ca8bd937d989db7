"""A browser of this machine: the one on its PATH, else the distribution's package."""

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass

FONTS = "fonts-dejavu-core"


@dataclass(frozen=True)
class MachineBrowser:
    """names: programs to look for, the best first. variable: of the environment, names another. packages: by installer, tried in order until a
    browser is there: not every distribution packs the same one."""

    title: str
    names: tuple[str, ...]
    variable: str
    packages: dict[str, tuple[str, ...]]

    def find(self) -> str | None:
        """Path of the program named in the variable, else of the first one on PATH; None when there is none."""
        named = os.environ.get(self.variable)
        found = (shutil.which(name) for name in ([named] if named else self.names))
        return next((path for path in found if path), None)

    def missing(self) -> str:
        """The one line for a machine without this browser."""
        named = os.environ.get(self.variable)
        looked_for = f"{self.variable}={named}" if named else ", ".join(self.names)
        return f"no {self.title} found ({looked_for}); install {self.title.lower()}, or name one in {self.variable}"

    def install(self) -> None:
        """Install the distribution's package, as root or through a sudo that asks for no password."""
        sudo = [] if os.geteuid() == 0 else ["sudo", "-n"]
        if sudo and not shutil.which("sudo"):
            return
        commands = {
            "apt-get": (("update", "-q"), *(("install", "-q", "-y", "--no-install-recommends", FONTS, each) for each in self.packages["apt-get"])),
            "dnf": tuple(("install", "-q", "-y", each) for each in self.packages["dnf"]),
            "apk": tuple(("add", "--quiet", each) for each in self.packages["apk"]),
        }
        installer = next((each for each in commands if shutil.which(each)), None)
        for words in commands[installer] if installer else ():
            if self.find() is None:
                subprocess.run([*sudo, str(installer), *words], check=False, stdout=subprocess.DEVNULL)

    def main(self) -> int:
        """Find it or install it, and print its path; print one clear line, and return 1, when neither can be done."""
        if self.find() is None and self.variable not in os.environ:
            print(f"no {self.title} here yet: installing the distribution's package", flush=True)
            self.install()
        path = self.find()
        print(path if path else self.missing(), file=sys.stdout if path else sys.stderr)
        return 0 if path else 1
