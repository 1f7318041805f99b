"""The app in this process, as one browser sees it."""

import re
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx

from gaugerod.adapters.store.store import JobStore
from gaugerod.web.serve import app_over

with warnings.catch_warnings():
    # The test client still speaks through the client we have; its successor is not needed for that.
    warnings.simplefilter("ignore")
    from starlette.testclient import TestClient

ADDRESS = "http://localhost:8417"


@dataclass(frozen=True)
class Browser:
    """One browser: keeps its cookies, and sends the token of the page it looks at."""

    client: TestClient
    store: JobStore
    job: str

    def get(self, path: str, **more: Any) -> httpx.Response:  # noqa: ANN401 - as the client takes it
        answer: httpx.Response = self.client.get(path, follow_redirects=False, **more)
        return answer

    def token(self) -> str:
        found = re.search(r'name="token" value="([0-9a-f]+)"', self.get("/about").text)
        assert found is not None
        return found[1]

    def post(self, path: str, form: dict[str, str] | None = None, **more: Any) -> httpx.Response:  # noqa: ANN401
        data = {"token": self.token(), **(form or {})}
        answer: httpx.Response = self.client.post(path, data=data, follow_redirects=False, **more)
        return answer

    def document(self) -> dict[str, Any]:
        return self.store.load(self.job).document


@contextmanager
def browsing(
    store: JobStore, folder: Path, *, lan: bool = False, secure: bool = False, address: str = ADDRESS
) -> Iterator[Browser]:
    """The app over the kept jobs, and a browser that looks at it."""
    app = app_over(store, folder=folder, lan=lan, secure=secure)
    with TestClient(app, base_url=address, raise_server_exceptions=False) as client:
        yield Browser(client=client, store=store, job=store.jobs()[0].job)
