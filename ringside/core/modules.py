"""Many small ES modules sent as one: on a field's network each request costs more than the code it brings.

Only our own modules, which keep to three forms: `import {...} from "./other.js";`, `export function|class|const`
and `export { name };`. Anything else is refused when static files are collected, not found out on a tablet.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

IMPORT = re.compile(r"""^import \{([^}]*)\} from "\./([\w-]+)\.js";\n""", re.MULTILINE)
EXPORT = re.compile(r"^export ((?:async )?(?:function|class|const)) (\w+)", re.MULTILINE)
EXPORT_LIST = re.compile(r"^export \{([^}]*)\};\n", re.MULTILINE)
OTHER = re.compile(r"^(?:import|export)\b.*", re.MULTILINE)


class CannotJoin(Exception):
    """The sentence names the module and the line that is in the way."""


def imported(text: str) -> list[str]:
    """The names, without ending, of the modules that this one imports, in order."""
    return [found[2] for found in IMPORT.finditer(text)]


def joined(entry: str, read: Callable[[str], str]) -> str:
    """The entry module with all that it imports, as one module. `read` gives a module's text by its name."""
    joining = Joining(read)
    joining.add(entry)
    return "\n".join(joining.parts) + "\n"


@dataclass
class Joining:
    read: Callable[[str], str]
    parts: list[str] = field(default_factory=list)
    done: dict[str, str] = field(default_factory=dict)
    """By module, the name that holds its exports; empty while what it imports is still being added."""

    def add(self, name: str) -> None:
        if name in self.done:
            if not self.done[name]:
                raise CannotJoin(f"{name}.js is imported by a module that it imports itself: break the ring.")
            return
        self.done[name] = ""
        text = self.read(name)
        for other in imported(text):
            self.add(other)
        self.done[name] = f"${len(self.parts)}"
        self.parts.append(self._scope(name, text))

    def _scope(self, name: str, text: str) -> str:
        """The module in a scope of its own that answers its exports: two modules may use one name."""
        exports = [found[2] for found in EXPORT.finditer(text)]
        exports += [each.strip() for found in EXPORT_LIST.finditer(text) for each in found[1].split(",")]
        text = IMPORT.sub(lambda found: f"const {{{found[1].replace(' as ', ': ')}}} = {self.done[found[2]]};\n", text)
        text = EXPORT_LIST.sub("", EXPORT.sub(r"\1 \2", text))
        if other := OTHER.search(text):
            raise CannotJoin(f"{name}.js: this form is not joined: {other[0]}")
        return f"const {self.done[name]} = (() => {{\n{text}return {{ {', '.join(exports)} }};\n}})();"
