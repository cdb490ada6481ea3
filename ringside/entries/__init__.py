"""Entries: files, forms, eligibility, numbers."""
