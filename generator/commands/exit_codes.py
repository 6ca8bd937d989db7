"""What a command ends with. README says the same to whoever writes a script (`tests/cli/test_exit_codes.py`)."""

from enum import IntEnum


class ExitCode(IntEnum):
    """Of every command, and the four of `swardbook hold`, where the answer itself is a number."""

    DONE = 0
    FINDINGS = 1
    USAGE = 2
    GO = 0
    CARE = 10
    HOLD = 20
    NOT_KNOWN = 30


# A row each: the code, and what it says.
OF_EVERY_COMMAND = (
    (ExitCode.DONE, "it is done, and nothing is wrong"),
    (ExitCode.FINDINGS, "something was found, or could not be done: the lines say what"),
    (ExitCode.USAGE, "the command was not understood: a word, an option or a value is not one of its own"),
)
OF_HOLD = ((ExitCode.GO, "go"), (ExitCode.CARE, "go with care"), (ExitCode.HOLD, "hold"), (ExitCode.NOT_KNOWN, "not known yet"))
# The answers of the hold rules to what the command ends with.
HOLD_CODES = {"go": ExitCode.GO, "care": ExitCode.CARE, "hold": ExitCode.HOLD, "ask": ExitCode.NOT_KNOWN}


def codes_text() -> str:
    """The table as help prints it."""
    return "Ends with " + "; ".join(f"{code.value} when {said}" for code, said in OF_EVERY_COMMAND) + "."


def hold_codes_text() -> str:
    return "Ends with " + "; ".join(f"{code.value} for {said}" for code, said in OF_HOLD) + "; and 1 or 2 as any command."
