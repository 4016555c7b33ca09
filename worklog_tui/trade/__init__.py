"""Shop sums and standard tables; every one names where it comes from."""
