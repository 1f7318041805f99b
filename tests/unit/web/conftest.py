from collections.abc import Iterator
from pathlib import Path

import pytest

from gaugerod.adapters.store.store import JobStore
from gaugerod.wiring import open_store, store_path
from tests.scenario.app_browser import Browser, browsing


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "kept"


@pytest.fixture
def store(folder: Path) -> Iterator[JobStore]:
    with open_store(store_path(str(folder))) as opened:
        yield opened


@pytest.fixture
def browser(store: JobStore, folder: Path) -> Iterator[Browser]:
    with browsing(store, folder) as opened:
        yield opened


@pytest.fixture
def second_browser(store: JobStore, folder: Path) -> Iterator[Browser]:
    with browsing(store, folder) as opened:
        yield opened
