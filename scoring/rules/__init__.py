"""Show rules of governing bodies: dated, sourced data and one function for each clause."""
