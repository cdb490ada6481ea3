"""A dog's age in calendar months, and the day on which the rules count it."""

from datetime import MAXYEAR, date, timedelta

from scoring.rules.rulebook import AgeDay


def completes_on(born: date, months: int) -> date | None:
    """The day on which a dog born on `born` completes a number of calendar months.

    Rule: the same day of the month, `months` months later; where that month does not have the day, the first of the
    next month (born 31 January, one month is completed on 1 March). So the count never ends early.
    Source: design of this project; the regulations only say "calendar months". Show rules count no shorter unit.
    Limits: libraries that clip to the end of the month differ here by design.
    Arguments: `months` is 0 or more.
    Returns: the day, or None where it lies after the year 9999.
    """
    year, month = divmod(born.year * 12 + born.month - 1 + months, 12)
    if year > MAXYEAR:
        return None
    try:
        return date(year, month + 1, born.day)
    except ValueError:
        # Only a short month lacks the day, and no short month ends a year.
        return date(year, month + 2, 1)


def completed_months(born: date, on: date) -> int:
    """The whole calendar months a dog has completed on a day; negative before it was born.

    Rule and limits: as `completes_on`; the day of completion itself counts as completed.
    """
    months = (on.year - born.year) * 12 + on.month - born.month
    return months if on.day >= born.day else months - 1


def counting_day(rule: AgeDay, shown_on: date, first_day: date) -> date:
    """The day on which the rules count a dog's age.

    Arguments: the day the dog is shown and the first day of the show, which may be the same.
    Returns: the day; the first day of the calendar where the day before it is meant.
    """
    start = first_day if "first-day" in rule else shown_on
    if rule.startswith("day-before") and start > date.min:
        return start - timedelta(days=1)
    return start
