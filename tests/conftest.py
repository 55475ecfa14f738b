"""Settings for the laws: the same cases on every machine and every day, and no clock."""

from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True, max_examples=60)
settings.load_profile("house")
