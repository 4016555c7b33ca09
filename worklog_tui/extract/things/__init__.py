"""Things: the words that name a part are one thing, with which one it is; what `it` and `the left one` stand for."""
