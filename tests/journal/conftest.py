"""Generated examples take the time they take: the machine may be busy."""

import os

from hypothesis import settings

settings.register_profile("unhurried", deadline=None)
settings.register_profile("long", deadline=None, max_examples=10_000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "unhurried"))
