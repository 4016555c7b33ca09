"""What a look or a test showed, read from the build of a clause where no pattern of words has read it."""
