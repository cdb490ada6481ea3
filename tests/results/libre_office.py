"""LibreOffice without a window: what it makes of a file, as another file."""

import csv
import io
import subprocess
from pathlib import Path

# LibreOffice's own words for its filters: separator ";", quote '"', UTF-8, from the first line on.
CSV_OPTIONS = "59,34,76,1"
CSV = f"csv:Text - txt - csv (StarCalc):{CSV_OPTIONS}"
SECONDS = 120


class LibreOffice:
    """One program with a profile of its own in the folder, so that it neither meets nor changes anybody's."""

    def __init__(self, program: str, folder: Path) -> None:
        self.program, self.folder = program, folder

    def turned(self, kind: str, *files: Path) -> list[Path]:
        """The files opened and saved as another kind: "csv", "xlsx" or "fods" (its flat XML)."""
        target = self.folder / f"as-{kind}-{len(list(self.folder.iterdir()))}"
        target.mkdir()
        for suffix in sorted({file.suffix for file in files}):
            some = [str(file) for file in files if file.suffix == suffix]
            reading = [f"--infilter=CSV:{CSV_OPTIONS}"] if suffix == ".csv" else []
            profile = f"-env:UserInstallation={(self.folder / 'profile').as_uri()}"
            said = subprocess.run(
                [self.program, profile, "--headless", *reading, "--convert-to", CSV if kind == "csv" else kind,
                 "--outdir", str(target), *some],
                capture_output=True, text=True, timeout=SECONDS, check=True,
            )  # fmt: skip
            missing = [file for file in some if not (target / f"{Path(file).stem}.{kind}").exists()]
            assert not missing, f"LibreOffice did not open {missing}: {said.stderr}"
        return [target / f"{file.stem}.{kind}" for file in files]


def rows_of(file: Path) -> list[list[str]]:
    """The cells of a CSV file, without the marks of UTF-8; as many in each row as there are headings."""
    text = file.read_bytes().decode("utf-8-sig")
    rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=";"))
    return [row + [""] * (len(rows[0]) - len(row)) for row in rows]


def formulas_in(file: Path) -> int:
    """How many cells of a flat XML file LibreOffice would compute."""
    return file.read_text(encoding="utf-8").count("table:formula=")
