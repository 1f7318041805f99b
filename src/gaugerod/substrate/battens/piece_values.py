"""The value of each piece: what it must cost at least, whichever stock length it is cut from.

Values are sound when no content of a stock length is worth more than that length costs. Then whatever is to be cut costs at
least the sum of its values: the dual of linear programming. ``own_values`` are sound and quick; ``best_values`` are
the sound ones that make one demand worth the most, by the simplex method over the contents (Gilmore and Gomory, 1961).
"""

from collections.abc import Sequence

Demand = tuple[int, ...]
"""How many pieces of each length, in the order of the lengths."""
Contents = Sequence[tuple[int, tuple[tuple[int, int], ...]]]
"""What each stock length costs, and (sort, number) of each piece cut from it."""

Values = tuple[float, ...]
"""The value of a piece of each length, in cost."""

A_LITTLE = 1e-2
"""Of a sort that is not wanted a little is wanted, so that it has a value too."""
MOST_TURNS_COUNT = 200
"""The simplex method turns far fewer times. Past this it stops with what it has, which is made sound all the same."""
RELATIVE_NOISE = 1e-12


def own_values(least: Sequence[float], contents: Contents) -> Values:
    """Sound values from sound ones that are too low (``least``): each raised in turn as far as it goes.

    >>> own_values([2.0, 1.0], [(3, ((0, 1),)), (4, ((0, 1), (1, 1))), (4, ((1, 2),))])
    (3.0, 1.0)
    """
    values = list(least)
    for sort in range(len(values)):
        values[sort] += max(
            0.0,
            min(
                (cost - sum(values[at] * many for at, many in pieces)) / dict(pieces)[sort]
                for cost, pieces in contents
                if any(at == sort for at, _ in pieces)
            ),
        )
    return tuple(values)


def best_values(demand: Demand, contents: Contents) -> Values:
    """The sound values with the greatest sum over the demand.

    >>> [round(value, 6) for value in best_values((1, 5), [(3, ((0, 1),)), (4, ((0, 1), (1, 1))), (4, ((1, 2),))])]
    [2.0, 2.0]
    """
    sorts = range(len(demand))
    wanted = [number or A_LITTLE for number in demand]
    costs, inverse, used = _of_one_sort(wanted, contents)
    values = [costs[sort] * inverse[sort][sort] for sort in sorts]
    for _ in range(MOST_TURNS_COUNT):
        lack, cost, pieces = min(
            (cost - sum([values[at] * many for at, many in pieces]), cost, pieces) for cost, pieces in contents
        )
        if lack >= -RELATIVE_NOISE * cost:
            break
        column = [sum([inverse[row][at] * many for at, many in pieces]) for row in sorts]
        row = min((row for row in sorts if column[row] > 1e-9), key=lambda row: used[row] / column[row])
        share = used[row] / column[row]
        pivot_row = [number / column[row] for number in inverse[row]]
        for other in sorts:
            if other != row and column[other]:
                by = column[other]
                used[other] = max(used[other] - by * share, 0.0)
                inverse[other] = [had - by * new for had, new in zip(inverse[other], pivot_row, strict=True)]
        inverse[row], used[row], costs[row] = pivot_row, share, cost
        values = [sum([costs[row] * inverse[row][sort] for row in sorts]) for sort in sorts]
    return _made_sound(values, contents)


def _of_one_sort(wanted: Sequence[float], contents: Contents) -> tuple[list[int], list[list[float]], list[float]]:
    """To start with, each sort alone in its best stock length: costs, the inverse of the basis, how many are used."""
    sorts = range(len(wanted))
    costs, inverse, used = [], [], []
    for sort in sorts:
        cost, number = min(
            ((cost, pieces[0][1]) for cost, pieces in contents if len(pieces) == 1 and pieces[0][0] == sort),
            key=lambda found: found[0] / found[1],
        )
        costs.append(cost)
        inverse.append([1.0 / number if at == sort else 0.0 for at in sorts])
        used.append(wanted[sort] / number)
    return costs, inverse, used


def _made_sound(values: Sequence[float], contents: Contents) -> Values:
    """Values brought down together until no stock length is worth more than it costs: by the noise of the sums."""
    none_below = [max(value, 0.0) for value in values]
    worth = max(sum([none_below[at] * many for at, many in pieces]) / cost for cost, pieces in contents)
    return tuple(none_below) if worth <= 1.0 else tuple(value / worth for value in none_below)
