"""The list that a buyer fills in: written, read again, and carried into the next one."""
