DATE_FORMAT = "j F Y"
DATETIME_FORMAT = "j F Y, H:i"
TIME_FORMAT = "H:i"
WEEKDAY_DATE_FORMAT = "l j F Y"
# No country's own order of figures: exhibitors come from many.
SHORT_DATE_FORMAT = "j M Y"
MONTH_DAY_FORMAT = "D j M"
SHORT_DATETIME_FORMAT = "D j M, H:i"
