"""Screens: they call the bench in worker threads, and hand its answers to widgets."""
