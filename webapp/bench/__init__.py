"""The bench: its stages, in one table, and the readiness asked for before a cup begins."""
