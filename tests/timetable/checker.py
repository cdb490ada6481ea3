"""An independent reading of what makes a timetable valid, straight from the request and the answer."""

from itertools import combinations


def minutes(clock):
    return int(clock[:2]) * 60 + int(clock[3:])


def problems(request, answer):
    """Everything wrong with the answer, in words; an empty list is a valid timetable."""
    blocks = {block["id"]: block for block in request["blocks"]}
    judge_days = {judge_day["id"]: judge_day for judge_day in request["judge_days"]}
    pins = {pin["block"]: pin for pin in request.get("pinned") or []}
    placed = {slot["block"]: slot for slot in answer["blocks"]}
    found = []
    if len(placed) != len(answer["blocks"]):
        found.append("a block stands twice")
    if set(placed) | set(answer["unplaced"]) != set(blocks) or set(placed) & set(answer["unplaced"]):
        found.append("a block is neither placed nor named as left out, or both")
    for slot in answer["blocks"]:
        found += slot_problems(request, blocks[slot["block"]], judge_days[slot["judge_day"]], pins, slot)
    for judge_day in judge_days.values():
        row = [slot for slot in answer["blocks"] if slot["judge_day"] == judge_day["id"]]
        found += row_problems(request, answer, judge_day, row, pins)
    return [*found, *pair_problems(request, answer, judge_days, placed)]


def slot_problems(request, block, judge_day, pins, slot):
    start, end = minutes(slot["start"]), minutes(slot["end"])
    exact = block["dogs"] * request["minutes_per_dog"]
    if not exact - 1e-6 <= end - start < exact + 1:
        yield f"{slot} takes another time than its dogs"
    if block["id"] in pins:
        pin = pins[block["id"]]
        if (pin["judge_day"], pin["start"]) != (slot["judge_day"], slot["start"]):
            yield f"{slot} has left its pin"
        return
    if judge_day["id"] not in block["judge_days"]:
        yield f"{slot} is before another judge"
    if start < minutes(judge_day["start"]) or end > minutes(judge_day["end"]):
        yield f"{slot} is outside hours"


def row_problems(request, answer, judge_day, row, pins):
    for one, other in combinations(row, 2):
        if one["block"] in pins and other["block"] in pins:
            continue
        first, second = sorted((one, other), key=lambda slot: (minutes(slot["start"]), minutes(slot["end"])))
        if minutes(second["start"]) < minutes(first["end"]) + request["gap_minutes"]:
            yield f"{first} and {second} are too close in one ring"
    rest = judge_day.get("break")
    codes = [(f["code"], f["facts"].get("judge_day")) for f in answer["findings"]]
    if rest and ("no-break", judge_day["id"]) not in codes and not has_break(rest, row):
        yield f"{judge_day['id']} has no break"


def has_break(rest, row):
    """Some minute of the window begins a whole break: every one is tried."""
    for start in range(minutes(rest["from"]), minutes(rest["to"]) - rest["minutes"] + 1):
        end = start + rest["minutes"]
        if all(minutes(slot["end"]) <= start or minutes(slot["start"]) >= end for slot in row):
            return True
    return False


def pair_problems(request, answer, judge_days, placed):
    def times(slot):
        return judge_days[slot["judge_day"]]["day"], minutes(slot["start"]), minutes(slot["end"])

    unresolved = {frozenset(pair) for pair in answer["unresolved"]}
    broken = set()
    for one, other in request["conflicts"]:
        if one != other and one in placed and other in placed:
            (day, start, end), (day_2, start_2, end_2) = times(placed[one]), times(placed[other])
            if day == day_2 and start < end_2 and start_2 < end:
                broken.add(frozenset((one, other)))
    for block in request["blocks"]:
        for earlier in block.get("after") or []:
            if block["id"] in placed and earlier in placed:
                (day, start, _), (day_2, _, end_2) = times(placed[block["id"]]), times(placed[earlier])
                if day < day_2 or (day == day_2 and start < end_2):
                    broken.add(frozenset((block["id"], earlier)))
    pins = {pin["block"] for pin in request.get("pinned") or []}
    for one, other in combinations(sorted(pins), 2):
        a, b = placed[one], placed[other]
        meet = minutes(a["start"]) < minutes(b["end"]) and minutes(b["start"]) < minutes(a["end"])
        if a["judge_day"] == b["judge_day"] and meet:
            broken.add(frozenset((one, other)))
    for pair in broken ^ unresolved:
        yield f"{set(pair)} is {'not said to be' if pair in broken else 'said to be'} unresolved"
