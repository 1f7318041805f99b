"""Writing what was made where the person asked for it."""

from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused

READ_IT_FIRST = "Read the remarks at its head first."
"""For a draft: what a drawing cannot say stands in it with a remark."""


def write_text(text: str, target: str, *, then: str, option: str = "--out") -> None:
    """To the file, saying what to do with it, or to standard output for ``-``. Raises InputRefused where it cannot be written."""
    if target == "-":
        print(text, end="")
        return
    try:
        Path(target).write_text(text, encoding="utf-8")
    except OSError as error:
        do = f"It cannot be written: {error.strerror}."
        raise InputRefused([Fault(option, target, "a file that can be written, or -", do)]) from None
    print(f"Written to {target}. {then}")
