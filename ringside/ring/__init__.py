"""The judge's tablet: sheets, edits and their sync."""
