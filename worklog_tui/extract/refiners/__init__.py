"""Refiners: each takes the drafts of a sentence and gives them back better, fewer or in another light."""
