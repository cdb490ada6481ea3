"""What a person agreed to: the words, when, by which way, and when it was withdrawn."""
