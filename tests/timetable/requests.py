"""Hypothesis strategies for timetable requests: small shows with every kind of demand in them."""

from hypothesis import strategies as st


def clock(minutes):
    return f"{minutes // 60:02}:{minutes % 60:02}"


@st.composite
def judge_days(draw, number, longest):
    start = draw(st.integers(540, 560))
    end = start + draw(st.integers(5, longest))
    judge_day = {"id": f"judge {number}", "day": draw(st.sampled_from(["2026-06-13", "2026-06-14"]))}
    judge_day |= {"start": clock(start), "end": clock(end)}
    if draw(st.booleans()):
        earliest = draw(st.integers(start, end - 2))
        latest = draw(st.integers(earliest + 1, end + 5))
        minutes = draw(st.integers(1, latest - earliest))
        judge_day["break"] = {"from": clock(earliest), "to": clock(latest), "minutes": minutes}
    return judge_day


@st.composite
def shows(draw, most_judge_days=3, most_blocks=8, most_dogs=12, longest=90, pins=True):
    days = [draw(judge_days(i, longest)) for i in range(draw(st.integers(1, most_judge_days)))]
    ids = [day["id"] for day in days]
    names = [f"block {i}" for i in range(draw(st.integers(1, most_blocks)))]
    blocks = [
        {
            "id": name,
            "dogs": draw(st.integers(0 if pins else 1, most_dogs)),
            "judge_days": draw(st.lists(st.sampled_from(ids), min_size=1, unique=True)),
            "after": draw(st.lists(st.sampled_from(names[:i]), max_size=2, unique=True)) if i else [],
        }
        for i, name in enumerate(names)
    ]
    pair = st.lists(st.sampled_from(names), min_size=2, max_size=2, unique=True)
    conflicts = draw(st.lists(pair, max_size=6)) if len(names) > 1 else []
    request = {"minutes_per_dog": draw(st.sampled_from([1, 2, 2.4, 3])), "gap_minutes": draw(st.integers(0, 3))}
    request |= {"judge_days": days, "blocks": blocks, "conflicts": conflicts}
    if pins:
        pinned = draw(st.lists(st.sampled_from(names), max_size=2, unique=True))
        request["pinned"] = [
            {"block": name, "judge_day": draw(st.sampled_from(ids)), "start": clock(draw(st.integers(535, 640)))}
            for name in pinned
        ]
    return request
