"""A job: reading and checking its file, and the invented one that the app starts with."""
