"""Opens each page of a folder in chromium: no console message, and it prints. `open_pages.py FOLDER`."""

import subprocess
import sys
import tempfile
from pathlib import Path

QUIET = (
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--no-pdf-header-footer", "--enable-logging=stderr",
)  # fmt: skip

for page in sorted(Path(sys.argv[1]).glob("*.html")):
    with tempfile.TemporaryDirectory() as place:
        printed = Path(place, "printed.pdf")
        command = ["chromium", *QUIET, f"--user-data-dir={place}", f"--print-to-pdf={printed}", page.resolve().as_uri()]
        done = subprocess.run(command, capture_output=True, text=True, errors="replace", timeout=120, check=True)
        said = [line for line in done.stderr.splitlines() if ":CONSOLE" in line]
        if said or not printed.read_bytes().startswith(b"%PDF-"):
            sys.exit("\n".join([f"{page}: chromium has something to say, or printed nothing", *said]))
        print(f"{page.name}: opened and printed, {printed.stat().st_size} bytes")
