"""What a form asks of a table of the job file, in its own words: what matters first, the rest under more."""

from dataclasses import dataclass, field
from enum import Enum

from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.web.form import Choice


class Kind(Enum):
    """How an answer is written: as lengths are, several of them, as a number, as words, yes or no, or chosen."""

    LENGTH = "length"
    LENGTHS = "lengths"
    NUMBER = "number"
    WORDS = "words"
    YES_NO = "yes-no"
    CHOICE = "choice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One field of a table. ``key`` is its place in the table; ``choices`` what can be chosen.

    ``allowed``  of several lengths: what each of them may be
    """

    key: str
    label: str
    kind: Kind = Kind.LENGTH
    hint: str = ""
    choices: tuple[Choice, ...] = ()
    allowed: Allowed | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class More:
    """Questions that can be left alone most of the time. ``rows`` are asked again and again, in the list ``rows_key``.

    ``most_rows_count``  as many as the job file takes
    """

    title: str
    says: str = ""
    questions: tuple[Question, ...]
    rows_key: str = ""
    rows: tuple[Question, ...] = ()
    most_rows_count: int = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class PartQuestions:
    """One table of the job file. ``key`` is its place in the document: ``battens``, ``edges.ridge``."""

    key: str
    title: str
    says: str
    first: tuple[Question, ...]
    more: tuple[More, ...] = field(default=())

    @property
    def questions(self) -> tuple[Question, ...]:
        """Every question but those of rows."""
        return (*self.first, *(question for group in self.more for question in group.questions))


def chosen(empty: str, **choices: str) -> tuple[Choice, ...]:
    """Choices with their words, and what it means to choose none. An underscore stands for a hyphen of the job file."""
    return (
        Choice(value="", label=empty),
        *(Choice(value=value.replace("_", "-"), label=label) for value, label in choices.items()),
    )


YES_OR_NOT = chosen("no", yes="yes")
YES_NO_UNKNOWN = chosen("not known", yes="yes", no="no")
