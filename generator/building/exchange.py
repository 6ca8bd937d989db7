"""The one step in which a new folder takes an old one's name, where the system has it."""

import ctypes
import errno
import os
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

# From the systems' own headers: linux/fcntl.h and linux/fs.h; macOS sys/stdio.h.
AT_FDCWD, RENAME_EXCHANGE = -100, 2
RENAME_SWAP = 2
NO_SUCH_STEP = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP}


def exchange(one: Path, other: Path) -> bool:
    """Let two folders exchange their names in one step. False where the system or its file system has no such step.

    Raises OSError where it has one and it fails; nothing has moved then.
    """
    rename = _rename()
    if rename is None:
        return False
    if rename(os.fsencode(one), os.fsencode(other)) == 0:
        return True
    number = ctypes.get_errno()
    if number in NO_SUCH_STEP:
        return False
    raise OSError(number, os.strerror(number), str(other))


def _rename() -> Callable[[bytes, bytes], int] | None:
    """The system's own call as a function of two paths, or None."""
    if sys.platform == "win32":
        return None
    library = ctypes.CDLL(None, use_errno=True)
    if hasattr(library, "renameat2"):  # Linux: glibc since 2.28, musl since 1.2.5
        call = library.renameat2
        call.argtypes = [ctypes.c_int, ctypes.c_char_p, ctypes.c_int, ctypes.c_char_p, ctypes.c_uint]
        return lambda one, other: call(AT_FDCWD, one, AT_FDCWD, other, RENAME_EXCHANGE)
    if hasattr(library, "renamex_np"):  # macOS; by its manual page, for no test here runs on one
        call = library.renamex_np
        call.argtypes = [ctypes.c_char_p, ctypes.c_char_p, ctypes.c_uint]
        return lambda one, other: call(one, other, RENAME_SWAP)
    return None


@contextmanager
def undisturbed() -> Iterator[None]:
    """Ctrl-C and its like wait until what is done in here is done."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGTERM, signal.SIGHUP})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
