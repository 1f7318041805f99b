"""What went wrong, in words."""

from dataclasses import dataclass
from typing import Self

_SAYS = {
    400: ("This could not be read.", "Go back and send it again."),
    401: (
        "The passphrase is wanted.",
        "Open another tab, sign in there, come back here and send again: what you typed is still on the page before this.",
    ),
    403: (
        "This page was too old to save from, or it was not one of ours.",
        "Open the page again and send it again. What was typed since it was last saved may have to be typed once more.",
    ),
    404: (
        "There is nothing here.",
        "The job may have been put away, or the link taken back. Look in the list of jobs.",
    ),
    405: ("This page does not do that.", "Go to the list of jobs and start from there."),
    408: ("It took too long to arrive.", "The connection is slow. Go back and send it again."),
    413: ("That is more than a job can be.", "Send a smaller file. A job file is at most 250 000 bytes."),
    500: (
        "A fault of this program, not of yours.",
        "Nothing that was saved is lost. Go back and try again; if it stays, tell whoever looks after this program.",
    ),
    503: ("This took too long to work out.", "The job may be very large: split it, then try again."),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TroubleContext:
    """What it is and what to do."""

    status: int
    says: str
    do: str

    @classmethod
    def of_status(cls, status: int) -> Self:
        """The words for a status of HTTP."""
        says, do = _SAYS.get(status, _SAYS[400 if status < 500 else 500])
        return cls(status=status, says=says, do=do)
