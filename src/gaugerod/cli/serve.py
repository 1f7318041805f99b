"""``gaugerod serve``: the app, on this machine or, with a passphrase, for phones on the same network."""

import argparse
import sys
from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused


def run(given: argparse.Namespace) -> int:
    """Serve until stopped. Raises InputRefused when the extra part the app needs is not installed."""
    try:
        from gaugerod.web.serve import Served, serve  # noqa: PLC0415 - an extra part, read when it is asked for
    except ModuleNotFoundError as missing:
        do = "Install it: pip install gaugerod[app]. Every other command works without."
        raise InputRefused([Fault("serve", f"no {missing.name} here", "the app's libraries", do)]) from None
    if (given.cert is None) != (given.key is None):
        raise InputRefused([Fault("--cert", "one of the two", "--cert and --key together", "Give both, or neither.")])
    served = Served(
        port=given.port,
        data=given.data,
        lan=given.lan,
        cert=None if given.cert is None else Path(given.cert),
        key=None if given.key is None else Path(given.key),
    )
    serve(served, say=lambda line: print(line, file=sys.stderr, flush=True))
    return 0
