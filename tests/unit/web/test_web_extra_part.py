import argparse
import sys

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.cli.serve import run


def test_without_the_apps_libraries_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, "gaugerod.web.serve", raising=False)
    monkeypatch.setitem(sys.modules, "uvicorn", None)
    given = argparse.Namespace(cert=None, key=None, port=0, data=None, lan=False)
    with pytest.raises(InputRefused) as refused:
        run(given)
    assert "pip install gaugerod[app]" in str(refused.value.faults[0])
