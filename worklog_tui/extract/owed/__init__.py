"""What is owed, read from the build of a clause: what is meant to be done, what is not to hand, what only stands in."""
