"""A made-up firm's repository, the same for the same numbers: what checking is measured on.

How it varies. All jobs share one catalogue (that of `samples/kestrel-house`). One job in ten is a hotel: four to
eight bathrooms as patterns, 40 to 120 rooms made from them by spans, half of them handed, a few with a wall of their
own, and a floor of public rooms. The others are houses and offices of 6 to 24 one-off rooms: shower rooms, WCs,
bedrooms, corridors, living rooms. A quarter of the rooms is L-shaped. Lengths are surveyed to 5 mm in nine rooms of
ten and to the millimetre in the tenth; opposite walls differ by 5 mm as often as not; a building has one or two
heights. Doors, windows, sockets, pipes, fixtures, wet regions, old tile, kept skirtings and architraves stand on some
walls, panels upright and flat, on glue and on battens. The jobs are nearly clean, as jobs are that have been checked
while they were written: one finding in 36 lines, most of them narrow strips, cables in line with sockets, and edges
without trim.

What repeats. `python tests/bench/generate.py` prints it: of 37,000 lines a tenth are blank or comments; of the
statements 78 % are word for word an earlier line (`surface sound`, `door 826 x 2040 at 300`), but no two one-off rooms
are alike. A repository in which no room's lengths repeat is in `generate_distinct.py`.
"""

import random
from collections import Counter
from pathlib import Path

SAMPLE = Path(__file__).parents[2] / "samples" / "kestrel-house" / "catalogue"
KINDS = ("shower", "shower", "wc", "bedroom", "bedroom", "living", "corridor", "office")
BEHIND = ("plaster over masonry", "plasterboard over timber-frame")
WORDS = (
    "north side",
    "behind the stair",
    "as agreed on site",
    "measured twice",
    "client keeps the radiator",
    "see photo",
)


def repository(rooms: int, seed: int = 1) -> dict[str, str]:
    """Paths and texts of as many jobs as hold `rooms` one-off rooms and patterns together; each is `*/job.room`."""
    dice = random.Random(seed)
    files = _catalogue()
    number = 0
    while rooms > 0:
        number += 1
        folder = f"job-{number:04d}"
        hotel = number % 10 == 5
        share = min(rooms, dice.randint(6, 12) if hotel else dice.randint(6, 24))
        height = dice.randrange(2350, 2560, 5)
        files[f"{folder}/job.room"] = _job(folder, dice)
        if hotel:
            patterns = dice.randint(4, 8)
            files[f"{folder}/rooms/patterns.room"] = _patterns(patterns, height, dice)
            files[f"{folder}/rooms/levels.room"] = _levels(patterns, dice)
            rooms -= patterns
        texts = [_room(f"g.{index + 1:02d}", height, dice) for index in range(share)]
        files[f"{folder}/rooms/ground.room"] = "\n".join(texts)
        rooms -= share
    return files


def one_job(rooms: int, seed: int = 1) -> dict[str, str]:
    """A job of that many one-off rooms in one file, about 21 lines each, beside the shared catalogue."""
    dice = random.Random(seed)
    texts = [_room(f"g.{index + 1:03d}", 2450, dice) for index in range(rooms)]
    return _catalogue() | {"job/job.room": _job("job-0001", dice), "job/rooms/ground.room": "\n".join(texts)}


def lines_of(files: dict[str, str]) -> int:
    """The lines of all files."""
    return sum(text.count("\n") for text in files.values())


def _catalogue() -> dict[str, str]:
    return {f"catalogue/{path.name}": path.read_text(encoding="utf-8") for path in sorted(SAMPLE.glob("*.room"))}


def _job(name: str, dice: random.Random) -> str:
    return (
        f'# Surveyed in week {dice.randint(1, 50)}.\njob {name} "Made-up job {name[4:]}"\n  use "../catalogue/*.room"\n'
        f'  use "rooms/*.room"\n  date 2026-11-25\n  currency EUR\n  tax 20 %\n  overhead {dice.randint(5, 12)} %\n'
        f"  labour two-fitters\n  pool {dice.choice(('job', 'level'))}\n  narrowest 60\n"
        '  allow box-not-flush because "the electrician brings them forward"\n'
        '  allow frame-behind-lining because "frames are widened by the joiner"\n'
    )


def _patterns(count: int, height: int, dice: random.Random) -> str:
    return "\n".join(_block(f"pattern bath-{number}", "shower", height, dice) for number in range(count))


def _levels(patterns: int, dice: random.Random) -> str:
    lines = ["# Even numbers lie on the street side, where bathrooms are handed.", ""]
    for level in range(1, dice.randint(3, 5)):
        first = 1
        for number in range(patterns):
            for handed in ("", " mirrored"):
                last = first + dice.randint(2, 6)
                lines += [
                    f"rooms {level}.{first:02d} to {level}.{last:02d} as bath-{number}{handed}",
                    f"  level l{level}",
                ]
                first = last + 1
        lines += [f"room {level}.{first:02d} as bath-0", f"  level l{level}", '  note "Old shaft behind."', ""]
    return "\n".join(lines)


def _room(name: str, height: int, dice: random.Random) -> str:
    return _block(f"room {name}", dice.choice(KINDS), height + dice.choice((0, 0, 0, 5, 10)), dice)


def _block(head: str, kind: str, height: int, dice: random.Random) -> str:
    step = 1 if dice.random() < 0.1 else 5
    wide, deep = dice.randrange(1600, 4800, step), dice.randrange(1500, 4200, step)
    flat = kind in ("living", "office") and dice.random() < 0.6
    lines = [f'{head} "Made-up {kind}"'] if head.startswith("room") else [head]
    lines += ["  level ground"] if head.startswith("room") else []
    lines += [f"  purpose {kind}", f"  height {height}", "  surface sound"]
    if kind == "corridor":
        lines.append(f"  keep skirting {dice.choice((70, 95, 120))}")
    lines.append(f"  finish {_finish(kind, flat, dice)}")
    lines += [f"  # {dice.choice(WORDS)}"] if dice.random() < 0.2 else []
    if dice.random() < 0.25:
        jut, notch = dice.randrange(500, wide - 700, step), dice.randrange(500, 1800, step)
        sides = [wide, deep, wide - jut, notch, jut, deep + notch]
    else:
        sides = [wide, deep, wide + dice.choice((0, 0, 5, -5)), deep + dice.choice((0, 0, 5, -5))]
    lines.append("")
    unsure = dice.random() < 0.03
    for index, side in enumerate(sides):
        about = "about " if unsure and index == 1 else ""
        lines.append(f"  wall {'abcdef'[index]} {about}{side}")
        lines += [f"    # {dice.choice(WORDS)}"] if dice.random() < 0.05 else []
        lines += _on_wall(kind, index, side, step, dice)
        lines += ["    corner outside"] if len(sides) == 6 and index == 2 else []
    return "\n".join(lines) + "\n"


def _finish(kind: str, flat: bool, dice: random.Random) -> str:
    if kind == "shower":
        return "limestone-long by glued-wet vertical start balanced"
    if flat:
        return "ash-plank by on-battens horizontal bond third rows balanced"
    if kind in ("corridor", "wc"):
        return f"limestone-long by glued-plain vertical start {dice.choice(('balanced', 'balanced', 'left', 'right'))}"
    return f"ash-plank by glued-dry vertical start {dice.choice(('balanced', 'balanced', 'centre', 'left'))}"


def _on_wall(kind: str, index: int, side: int, step: int, dice: random.Random) -> list[str]:
    walls = {"shower": ("cement-board over masonry",), "wc": ("plaster over masonry",)}.get(kind, BEHIND)
    lines = [f"    on {dice.choice(walls)}"]
    if index == 0 and kind == "shower":
        lines.append(f"    wet direct from 0 to {dice.randrange(800, 1300, 50)} up 0 to 2100")
        lines.append(f'    pipe "shower valve" at {dice.randrange(300, 700, step)} up 1100')
    elif index == 1 and side > 1300:
        lines.append("    keep architrave 60")
        lines.append(f"    door {dice.choice((626, 726, 826))} x 2040 at {dice.randrange(100, side - 950, step)}")
        lines.append(f"    switch at {dice.randrange(10, 90, step)} up 1050")
    elif side > 1400 and dice.random() < 0.3:
        width = dice.choice((600, 700, 900, 1050))
        place = dice.randrange(100, side - width - 90, step)
        lined = " reveal 110 lined" if kind in ("shower", "bedroom") else ""
        high, sill = dice.choice((900, 1000, 1200)), dice.choice((830, 1000))
        lines.append(f"    window {width} x {high} at {place} sill {sill}{lined}")
    elif side > 1000 and dice.random() < 0.4 and kind != "shower":
        lines.append(f"    socket at {dice.randrange(200, side - 200, step)} up 450")
    if kind == "wc" and index == 2:
        lines.append(f'    fixture "wash-basin" at {dice.randrange(300, side - 200, step)} up 800 load 40 kg')
    if kind in ("bedroom", "office") and dice.random() < 0.1:
        lines.append(f"    flat {dice.randint(1, 4)} under 2 m")
    return lines


def shares(files: dict[str, str]) -> str:
    """How many lines are blank or comments, and how many statements are the words of an earlier line."""
    lines = [line.strip() for text in files.values() for line in text.split("\n")[:-1]]
    said = Counter(line for line in lines if line and not line.startswith("#"))
    silent = len(lines) - said.total()
    again = 1 - len(said) / said.total()
    return f"{len(lines)} lines; {silent / len(lines):.0%} blank or comments; {again:.0%} of the statements repeat"


if __name__ == "__main__":
    print(shares(repository(1500)))
