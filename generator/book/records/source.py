"""Where figures come from: one entry in sources.yml each."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.book.fields.numbers import OfKind
from generator.book.fields.sourced import Record, RecordProblem
from generator.book.fields.texts import Sentence, Title, WebAddress, Word

Read = Literal["whole", "part", "quoted"]
Interest = Literal["trade", "private"]


class Source(Record):
    title: Title = Field(description="Title of the publication.")
    organisation: Word = Field(description="The body that published: a university, a government, a society; never a server.")
    short: Word | None = Field(default=None, description="How the marks beside a figure name it: UF/IFAS, NC State.")
    year: Annotated[int, OfKind("year of a text")] | None = Field(default=None, description="Year of publication, if shown.")
    where: Sentence | None = Field(default=None, description="Chapter, table, page or equation.")
    address: WebAddress | None = Field(default=None, description="The publishing body's own page.")
    no_address: Sentence | None = Field(
        default=None, description="Why there is none, in a sentence: A printed book. Required when there is no address."
    )
    read: Read = Field(description="How far it was read: whole, part, or only as another published text quotes or reprints it (quoted).")
    interest: Interest | None = Field(
        default=None,
        description="Whose interest to know of: trade (press, makers' or growers' bodies) or private (one firm or person). Only where no public body says it.",
    )
    note: Sentence | None = Field(default=None, description="What to know before relying on it.")
    attribution: Sentence | None = Field(
        default=None, description="The wording its owner asks for; shown on every page that uses the data."
    )
    licence: Sentence | None = Field(default=None, description="Terms of use, in the owner's words.")

    @model_validator(mode="after")
    def _says_where_it_is(self) -> "Source":
        if self.address is None and self.no_address is None:
            raise RecordProblem("this source has no address", "give the publishing body's own page, or say in 'no_address' why there is none")
        if self.address is not None and self.no_address is not None:
            raise RecordProblem("this source has an address and says why it has none", "take one of the two out", "no_address")
        return self

    @property
    def label(self) -> str:
        """Short name and year, as a mark beside a figure; with whose interest, where it is not a public body's."""
        name = self.short or self.organisation
        dated = f"{name} {self.year}" if self.year else name
        return f"{dated} ({self.interest})" if self.interest else dated
