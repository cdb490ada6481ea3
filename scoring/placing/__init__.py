"""Merit, the proposed order of a class, and the findings where the judge's order and the sheets disagree."""
