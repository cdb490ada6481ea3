"""Dogs, their owners, titles and certificates."""
