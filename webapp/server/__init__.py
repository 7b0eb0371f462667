"""The server for desks: its pages, and the socket it listens on."""
