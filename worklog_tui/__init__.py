"""A recorder that turns a working session on an old machine into a repair log."""

__version__ = "0.1.0"
