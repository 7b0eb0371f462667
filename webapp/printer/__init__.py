"""The printers: from the syntax of a formula to JavaScript, and to a working that a person can read."""
