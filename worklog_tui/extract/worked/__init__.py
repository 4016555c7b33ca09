"""Work that the build of a clause tells, where no pattern of words has read it."""
