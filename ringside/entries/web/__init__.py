"""The exhibitor's entries: a show that is open, own dogs, the classes open to them, changed until entries close."""
