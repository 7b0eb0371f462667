"""Sixteenth: an offline job sheet for people who flood sign faces with a two-part resin."""
