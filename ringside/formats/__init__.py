"""How days and times are written, one folder a language.

DATE_FORMAT is a whole day, MONTH_DAY_FORMAT a day of a show with its weekday, SHORT_DATETIME_FORMAT a moment of a show
day; numbers follow Django's own formats of the language.
"""
