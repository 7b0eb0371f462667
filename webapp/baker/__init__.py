"""The baker: turns static files, printed formulas and the page into one folder that any host can serve."""
