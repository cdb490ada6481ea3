"""The trade's arithmetic: standard library only, no Django, no clock, no randomness."""
