"""Public lines and services by country (services.yml): whom to ring, and who says where the pipes lie. Their names stand nowhere else."""

from typing import Annotated

from pydantic import Field, StringConstraints

from generator.book.fields.sourced import CautionId, CountryId, ExpertId, Record, Sourced, heard
from generator.book.fields.texts import TELEPHONE, Identifier, WebAddress, Word

Telephone = Annotated[str, StringConstraints(pattern=TELEPHONE, max_length=40)]


class ServiceKind(Record):
    """One kind of line, as texts speak of it: the poisons line."""

    name: Word = Field(description="In general words, as texts say it: The poisons line. No service by its own name.")
    for_cautions: tuple[CautionId, ...] = Field(default=(), description="Cautions that show it.")
    for_experts: tuple[ExpertId, ...] = Field(default=(), description="Experts whose entry shows it.")


class Service(Sourced):
    """Who that is in one country."""

    name: Word = Field(description="What it is called there.")
    number: Telephone | None = Field(default=None, description="As it is dialled within the country, in quotes: '13 11 26'.")
    address: WebAddress | None = Field(default=None, description="Its own page, where it is asked on the web.")
    misspellings: tuple[Word, ...] = heard("What people call it by: former names, and slips.")


class ServiceCountry(Record):
    lines: dict[Identifier, Service] = Field(min_length=1, description="By kind, as above.")


class Services(Record):
    """One file, data/services.yml. The lines of a country more are an entry more here."""

    kinds: dict[Identifier, ServiceKind] = Field(min_length=1, description="In the order in which they are shown.")
    countries: dict[CountryId, ServiceCountry] = Field(min_length=1, description="By country: its two capitals in countries.yml.")
