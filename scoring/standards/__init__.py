"""Breed standards as data: one TOML file a breed, every figure with its source."""
