"""How much one file may hold: enough for any show, little enough to be read at once."""

MOST_BYTES = 5 * 1024 * 1024
MOST_UNPACKED = 60 * 1024 * 1024
MOST_ROWS = 20_000
MOST_COLUMNS = 60
MOST_IN_CELL = 2_000
