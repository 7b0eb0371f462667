"""Names in pages, scripts and tables, resolved at the bake: a wrong one never reaches a phone."""
