"""Suspects that the build of a sentence tells, where no pattern did: alternatives and lists of causes."""
