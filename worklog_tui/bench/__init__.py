"""The workbench: the use-cases that the command line and the screens call."""
