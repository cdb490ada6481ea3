"""Many modules sent as one: scopes stay apart, what is not understood is refused."""

import re
from pathlib import Path

import pytest
from django.conf import settings

from ringside.core.modules import CannotJoin, imported, joined


def reader(modules):
    return lambda name: modules[name]


def test_what_is_imported_comes_before_what_imports_it_and_once():
    text = joined("page", reader({
        "page": 'import { a } from "./a.js";\nimport { b as c } from "./b.js";\na(c);\n',
        "a": 'import { b } from "./b.js";\nexport function a() { return b; }\n',
        "b": "export const b = 1;\n",
    }))  # fmt: skip
    assert text.count("const b = 1;") == 1
    assert text.index("const b = 1;") < text.index("function a()") < text.index("a(c);")
    assert "const { b: c } = " in text
    scopes = re.findall(r"^const (\$\d+) = ", text, re.MULTILINE)
    assert len(scopes) == len(set(scopes)) == 3


def test_modules_that_import_one_another_in_a_ring_are_refused():
    ring = {"page": 'import { a } from "./a.js";\n', "a": 'import { b } from "./page.js";\nexport const a = b;\n'}
    with pytest.raises(CannotJoin, match="page"):
        joined("page", reader(ring))


@pytest.mark.parametrize("line", ['import x from "./a.js";', "export default 1;", 'import "./a.js";'])
def test_a_form_that_is_not_understood_is_refused_with_its_line(line):
    with pytest.raises(CannotJoin, match=r"page\.js"):
        joined("page", reader({"page": f"{line}\n", "a": ""}))


def test_the_ring_page_is_joined_of_every_module_it_imports():
    folder = Path(settings.BASE) / "static" / "ring"
    read = []
    joined("page", lambda name: read.append(name) or (folder / f"{name}.js").read_text(encoding="utf-8"))
    wanted = {name for each in read for name in imported((folder / f"{each}.js").read_text(encoding="utf-8"))}
    assert wanted | {"page"} == set(read)
    assert len(read) == len(set(read)) > 40
