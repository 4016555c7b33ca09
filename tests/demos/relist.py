"""`python -m tests.demos.relist` writes down anew what is known to fail, and says how long each list was and is."""

from __future__ import annotations

from tests.demos.test_demos import DEMOS, known, now_failing

HEAD = "# What is known to fail; the list may only shrink. Written by python -m tests.demos.relist\n"


def main() -> None:
    for folder in DEMOS:
        path = folder / "expected" / "known_failures.txt"
        before = len(known(folder)) if path.is_file() else 0
        rows = sorted(now_failing(folder))
        path.write_text(HEAD + "".join(f"{row}\n" for row in rows), encoding="utf-8")
        print(f"{folder.name}: {before} before, {len(rows)} now")


if __name__ == "__main__":
    main()
