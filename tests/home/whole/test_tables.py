"""Every model of the program is in the file of a show, or named as left out with the reason."""

from django.db import models

from ringside.home.whole import tables
from ringside.home.whole.ids import PLAIN_JSON, TRANSLATED
from ringside.home.whole.reading import CHECKS


def labels(found) -> set[str]:
    return {model._meta.label_lower for model in found}


def fields():
    return [(f"{m._meta.label_lower}.{f.name}", f) for m in tables.covered() for f in tables.fields_of(m)]


def test_every_model_is_covered_or_named_as_left_out_with_its_reason():
    known = labels(tables.covered()) | tables.LEFT_OUT.keys()
    assert labels(tables.own_models()) - known == set(), (
        "These models are neither part of a show's file (no way to the show) nor named in LEFT_OUT with the reason."
    )
    assert known - labels(tables.own_models()) == set()
    assert labels(tables.covered()) & tables.LEFT_OUT.keys() == set()
    assert all(len(reason) > 20 for reason in tables.LEFT_OUT.values())


def test_every_json_field_is_known_to_hold_ids_or_none():
    found = {name for name, field in fields() if isinstance(field, models.JSONField)}
    assert found - TRANSLATED.keys() - PLAIN_JSON == set(), (
        "Say in ringside/home/whole/ids.py whether this JSON names rows (TRANSLATED) or none (PLAIN_JSON)."
    )
    assert PLAIN_JSON - found == set()


def test_every_kept_file_has_a_check_before_it_is_taken_in():
    assert {name for name, field in fields() if isinstance(field, models.FileField)} == CHECKS.keys()


def test_no_row_of_the_file_needs_one_that_is_left_out():
    covered = tables.covered()
    needed = [
        (model, field)
        for model in covered
        for field in tables.links(model)
        if not field.null and field.related_model not in covered
    ]
    assert needed == []


def test_every_table_comes_after_those_it_names():
    order = list(tables.covered())
    for model in order:
        for field in tables.links(model):
            assert field.related_model not in order or order.index(field.related_model) <= order.index(model)


def test_what_is_named_as_left_out_of_a_table_is_a_field_of_it():
    for label, names in tables.FIELDS_LEFT_OUT.items():
        model = next(one for one in tables.covered() if one._meta.label_lower == label)
        assert names <= {field.name for field in model._meta.concrete_fields}
