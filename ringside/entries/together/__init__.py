"""Braces, breeders' and progeny groups, and junior handling: entered, checked, listed."""
