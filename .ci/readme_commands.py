"""Print the first two fenced commands of a README, one a line; exit 1 where they are not two lines."""

import re
import sys
from pathlib import Path

blocks = re.findall(r"^```(?:sh|bash|console)?\n(.*?)^```", Path(sys.argv[1]).read_text(encoding="utf-8"), re.M | re.S)[
    :2
]
if len(blocks) < 2 or any(block.strip().count("\n") for block in blocks):
    sys.exit("The README must begin with two fenced commands of one line each.")
print(*(block.strip() for block in blocks), sep="\n")
