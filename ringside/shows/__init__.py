"""Shows, days, rings, judges, roles and the classes offered."""
