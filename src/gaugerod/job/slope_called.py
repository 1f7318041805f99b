"""What a slope is called in a heading or a sentence."""


def slope_called(name: str) -> str:
    """The slope by its name inside a sentence, the word "slope" said once.

    >>> slope_called("rear"), slope_called("Slope 1"), slope_called("slopeside")
    ('slope rear', 'slope 1', 'slope slopeside')
    """
    first, _, rest = name.partition(" ")
    return f"slope {rest if first.casefold() == 'slope' and rest.strip() else name}"


def slope_heading(name: str) -> str:
    """The same at the head of a sentence or a page.

    >>> slope_heading("rear"), slope_heading("slope 1")
    ('Slope rear', 'Slope 1')
    """
    return f"S{slope_called(name)[1:]}"
