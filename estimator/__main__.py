"""``python -m estimator``."""

from estimator.cli import main

main()
