"""The formula book: one file for each step of the trade, every figure written once."""
