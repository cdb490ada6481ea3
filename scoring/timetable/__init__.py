"""The ring timetable: which judge takes which block of dogs, and when."""
