"""What the talk leaves behind for its next words: a running test, its unit, a list, a reading just given."""
