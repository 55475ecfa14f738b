"""Settings for the tests: the same cases on every machine and every day, no clock, no memory."""

import os

from hypothesis import settings

os.environ["ESTIMATOR_MEMORY"] = "off"  # no test hangs on what another run has worked out

settings.register_profile("house", deadline=None, derandomize=True, max_examples=60)
settings.load_profile("house")
