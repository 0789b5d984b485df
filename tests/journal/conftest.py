"""Generated examples take the time they take: the machine may be busy."""

from hypothesis import settings

settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")
