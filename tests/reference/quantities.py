#!/usr/bin/env python3
"""Runs two general-purpose quantity parsers over the example messages, to stand beside our reader in its figures.

Run by hand, since a Rust build should need neither Python nor Node:

    python3 -m venv venv && venv/bin/pip install 'quantulum3[classifier]==0.10.0' 'scikit-learn==1.9.1'
    npm install @microsoft/recognizers-text-number-with-unit@1.3.1   # in a folder of its own
    venv/bin/python tests/reference/quantities.py FOLDER_OF_NODE_MODULES

It writes `tests/data/outside-parsers/<parser>.jsonl`: one message a line, with what the parser answered as it stands,
value and name of the unit of measure. What of that counts as a reading is decided in `tests/core/reader/outside.rs`.
Neither parser is made for crews' messages; they show what a general tool makes of the same text.
"""

import importlib.metadata
import json
import pathlib
import subprocess
import sys
import warnings

PINNED = {"quantulum3": "0.10.0"}

warnings.filterwarnings("ignore")
from quantulum3 import parser  # noqa: E402

HERE = pathlib.Path(__file__).resolve().parent
EXAMPLES = HERE.parent.parent / "grammar" / "examples"
OUT = HERE.parent / "data" / "outside-parsers"


def messages():
    """Yields id, culture and text of each example message, in the order of the files."""
    for path in sorted(EXAMPLES.glob("*.jsonl")):
        culture = "es-es" if path.stem.split("-")[-1] == "es" else "en-us"
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.strip():
                example = json.loads(line)
                yield {"id": example["id"], "culture": culture, "text": example["text"]}


def quantulum(text):
    """Asks quantulum3, which knows English only; a crash of its own counts as no answer."""
    try:
        return [[round(q.value, 6), q.unit.name] for q in parser.parse(text)]
    except Exception:  # noqa: BLE001 - whatever it raises, it found nothing
        return []


def write(name, answers):
    """Writes one parser's answers, a message a line."""
    OUT.mkdir(parents=True, exist_ok=True)
    lines = [json.dumps({"id": key, "found": found}, ensure_ascii=False, separators=(",", ":")) for key, found in answers]
    (OUT / f"{name}.jsonl").write_text("\n".join(lines) + "\n", encoding="utf-8")
    print(f"{name}: {len(lines)} messages")


def main():
    for name, pinned in PINNED.items():
        found = importlib.metadata.version(name)
        if found != pinned:
            sys.exit(f"{name} is {found}, pinned is {pinned}: change the pin and read the difference")
    asked = list(messages())
    write("quantulum3", [(m["id"], quantulum(m["text"])) for m in asked])
    told = subprocess.run(
        ["node", str(HERE / "quantities.mjs"), sys.argv[1]],
        input=json.dumps(asked),
        capture_output=True,
        check=True,
        text=True,
        encoding="utf-8",
    )
    write("recognizers-text", json.loads(told.stdout))


if __name__ == "__main__":
    main()
