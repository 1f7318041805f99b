"""No test is timed: how long an example of a property takes depends on what else the machine does."""

from importlib.util import find_spec

if find_spec("hypothesis") is not None:  # the engine's tests also run in a browser's Python, where nothing is installed
    from hypothesis import settings

    settings.register_profile("untimed", settings(), deadline=None)
    settings.load_profile("untimed")
