"""Where figures come from: one entry in sources.yml each."""

from pydantic import Field

from generator.model.record import Record, Sentence, Word
from generator.model.texts import Title, WebAddress


class Source(Record):
    title: Title = Field(description="Title of the publication.")
    organisation: Word = Field(description="Who published it.")
    short: Word | None = Field(default=None, description="How the marks beside a figure name it: UF/IFAS, NC State.")
    year: int | None = Field(default=None, ge=1900, le=2100, description="Year of publication, if shown.")
    where: Sentence | None = Field(default=None, description="Chapter, table, page or equation.")
    address: WebAddress | None = Field(default=None, description="Public address, if it has one.")
    read: bool = Field(description="True when the source itself (or a copy of it) was read for this book.")
    note: Sentence | None = Field(default=None, description="What to know before relying on it.")
    attribution: Sentence | None = Field(
        default=None, description="The wording its owner asks for; shown on every page that uses the data."
    )
    licence: Sentence | None = Field(default=None, description="Terms of use, in the owner's words.")

    @property
    def label(self) -> str:
        """Short name and year, as a mark beside a figure."""
        name = self.short or self.organisation
        return f"{name} {self.year}" if self.year else name
