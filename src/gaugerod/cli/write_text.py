"""Writing what was made where the person asked for it."""

from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused


def write_text(text: str, target: str) -> None:
    """To the file, or to standard output for ``-``. Raises InputRefused where it cannot be written."""
    if target == "-":
        print(text, end="")
        return
    try:
        Path(target).write_text(text, encoding="utf-8")
    except OSError as error:
        do = f"It cannot be written: {error.strerror}."
        raise InputRefused([Fault("--out", target, "a file that can be written, or -", do)]) from None
    print(f"Written to {target}. Read the remarks at its head first.")
