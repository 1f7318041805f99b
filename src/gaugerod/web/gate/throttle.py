"""Waits between tries at the passphrase: each wrong try doubles the wait, for its address and for all together."""

from dataclasses import dataclass, field
from threading import Lock

FREE_TRIES_COUNT = 4
"""Slips of the thumb that cost nothing (house limit)."""
FREE_TRIES_OF_ALL_COUNT = 20
LONGEST_WAIT_S = 900.0
LONGEST_WAIT_OF_ALL_S = 30.0
"""All together wait less, so that a stranger cannot lock the owner out for long (house limit)."""
_MOST_ADDRESSES_COUNT = 10_000
_FORGOTTEN_AFTER_S = 24 * 3600.0


@dataclass(slots=True)
class _Tries:
    count: int = 0
    last_s: float = 0.0


@dataclass(slots=True)
class Throttle:
    """Counts wrong tries. A try counts as wrong until it proves right, so that many at once gain nothing."""

    _by_address: dict[str, _Tries] = field(default_factory=dict)
    _all: _Tries = field(default_factory=_Tries)
    _lock: Lock = field(default_factory=Lock)

    def ask(self, address: str, *, now_s: float) -> float:
        """Seconds still to wait; 0.0 lets this one try through and counts it."""
        with self._lock:
            own = self._by_address.get(address, _Tries())
            wait_s = max(
                _left(own, free_count=FREE_TRIES_COUNT, longest_s=LONGEST_WAIT_S, now_s=now_s),
                _left(self._all, free_count=FREE_TRIES_OF_ALL_COUNT, longest_s=LONGEST_WAIT_OF_ALL_S, now_s=now_s),
            )
            if wait_s > 0:
                return wait_s
            self._make_room(now_s)
            self._by_address[address] = _Tries(own.count + 1, now_s)
            self._all = _Tries(self._all.count + 1, now_s)
            return 0.0

    def right(self, address: str) -> None:
        """The try was right: this address starts afresh, and the try no longer counts for all."""
        with self._lock:
            if self._by_address.pop(address, None) is not None and self._all.count > 0:
                self._all.count -= 1

    def _make_room(self, now_s: float) -> None:
        if now_s - self._all.last_s > _FORGOTTEN_AFTER_S:
            self._all = _Tries()
        if len(self._by_address) >= _MOST_ADDRESSES_COUNT:
            oldest = sorted(self._by_address, key=lambda address: self._by_address[address].last_s)
            for address in oldest[: _MOST_ADDRESSES_COUNT // 10]:
                del self._by_address[address]


def _left(tries: _Tries, *, free_count: int, longest_s: float, now_s: float) -> float:
    """What is left of the wait after the last try."""
    over_count = tries.count - free_count
    if over_count < 0:
        return 0.0
    wait_s = min(2.0 ** min(over_count, 30), longest_s)
    return max(0.0, tries.last_s + wait_s - now_s)
