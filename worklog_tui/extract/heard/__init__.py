"""What was heard: a line cut into words, and mis-heard ones taken back."""
