"""The sheet: the formulas of the book wired by their names, and the runner that fills a job's cells."""
