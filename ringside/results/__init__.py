"""Placings, publishing, and what is still missing."""
