"""Widgets: they draw model objects and post messages; none calls the bench."""
