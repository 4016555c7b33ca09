"""Numbers among the words, spoken or in figures: with a unit, as a range, as a thread; not yet what they measure."""
