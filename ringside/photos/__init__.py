"""Measured photos: taken in, marked, read, shared by whoever owns the dog."""
