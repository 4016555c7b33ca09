"""Finders: each makes drafts of one kind of fact from the matches of the rules."""
