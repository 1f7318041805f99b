"""What pages may use: the kept jobs and the clock."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from gaugerod.adapters.store.store import JobStore


@dataclass(frozen=True, slots=True, kw_only=True)
class Services:
    """Given to every view."""

    store: JobStore
    now: Callable[[], datetime]
