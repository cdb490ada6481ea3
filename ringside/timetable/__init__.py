"""The day's plan: when each breed, or a part of it that is judged apart, begins in its ring."""
