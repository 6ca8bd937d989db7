"""What is said of a typed quantity that is not read: one line, from the sentences that the browser has too."""

from generator.units.typed_text import REFUSALS, SENTENCES


class QuantityError(ValueError):
    """What somebody typed is no such quantity: a code for programs, a sentence for people.

    what: what is wrong; instead: what would be right, or nothing where there is no saying. The sentence is both.
    """

    def __init__(self, code: str, sentence: str, **values: str) -> None:
        self.code = code
        self.sentence = SENTENCES[sentence].format(**values)
        self.what, self.instead = (part.format(**values) for part in REFUSALS[sentence])
        super().__init__(self.sentence)


def refusal(code: str, sentence: str | None = None, **values: str) -> QuantityError:
    return QuantityError(code, sentence or code, **values)
