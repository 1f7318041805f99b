"""No test is timed: how long an example of a property takes depends on what else the machine does."""

from hypothesis import settings

settings.register_profile("untimed", settings(), deadline=None)
settings.load_profile("untimed")
