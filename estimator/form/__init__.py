"""A plan as a form to fill in: its sheets and columns, and how values stand in cells.

Sheets and columns follow the tables of ``estimator.plan``; whoever writes or reads a plan as a
spreadsheet asks here, and a new key of a table is a new column without a line of code.
"""
