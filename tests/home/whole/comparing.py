"""Two files of a show beside each other."""

import io
import json
import zipfile
from itertools import zip_longest


def content(file: bytes) -> dict:
    """What the file says without its stamp, photos byte by byte."""
    with zipfile.ZipFile(io.BytesIO(file)) as archive:
        told = json.loads(archive.read("show.json"))
        told["bytes"] = {name: archive.read(name) for name in archive.namelist() if name != "show.json"}
    del told["made_at"]
    return told


def different(one: bytes, other: bytes) -> list:
    """What is not the same in two files of a show: rows that differ, then anything else."""
    first, second = content(one), content(other)
    pairs = [
        (label, *rows)
        for label in first["tables"].keys() | second["tables"].keys()
        for rows in zip_longest(first["tables"].get(label, []), second["tables"].get(label, []))
    ]
    rows = [pair for pair in pairs if pair[1] != pair[2]]
    return rows or [name for name in first.keys() | second.keys() if first.get(name) != second.get(name)]
