"""A made-up repository in which nothing repeats but the catalogue, and half the rooms have mistakes: the hard case.

How it varies: rooms are rectangles or, one in four, L-shaped; sides 0.5 to 6 m to the millimetre (in one room of ten
two of them stated as `about`); heights 2.2 to 3 m; a door in each room, windows, sockets, tile, wet regions
and kept skirtings on some walls; a third of the rooms horizontal on battens, the others upright and glued; comments
and blank lines as people leave them. About seventeen lines a room, a finding in three
lines; each job has a catalogue of its own, the same words in all.
"""

import random

CATALOGUE = """\
panel stone-long "Stone print, long"
  length 2600
  length 3200
  cover 250
  thick 10
  tongue 8
  weighs 5.5 kg/m2
  pack 5
  price 31.50 each
  lay vertical horizontal overhead
  joined all edges
  reaction B-s2,d0
  wet direct
trim edge-10 "Edge trim"
  role edge
  fits 10
  length 2600
  allows 2
  price 9.80 each
support batten "Softwood batten"
  section 25 x 50
  length 2400
  price 3.20 each
fixing panel-screw
  size 3.5 x 35
  pack 200
  price 11.40 per pack
adhesive grab
  tube 290 ml
  price 6.20 each
sealant clear
  tube 310 ml
  price 5.10 each
method glued "Glued and sealed"
  glue grab bead 8 every 300
  seal clear bead 5 at joints corners floor ceiling edges
  inside-corner butted
  edge edge-10
method on-battens "Screwed to battens"
  battens batten every 400
  screw panel-screw
  fix panel-screw every 600
  inside-corner butted
  edge edge-10
gang two-fitters
  rate 62.00 per h
  takes 0.30 h/m2 for panels
  takes 0.06 h/m for trims
"""


def repository(jobs: int, rooms: int, seed: int = 1) -> dict[str, str]:
    """Paths and texts: `jobs` jobs, each with a catalogue and a file of its share of the `rooms`."""
    dice = random.Random(seed)
    files: dict[str, str] = {}
    for number in range(jobs):
        folder = f"job-{number + 1:04d}"
        share = range(rooms * number // jobs, rooms * (number + 1) // jobs)
        files[f"{folder}/job.room"] = _job(folder, dice)
        files[f"{folder}/catalogue.room"] = CATALOGUE
        files[f"{folder}/rooms.room"] = "\n".join(_room(f"{index + 1:05d}", dice) for index in share)
    return files


def lines_of(files: dict[str, str]) -> int:
    """The lines of all files."""
    return sum(text.count("\n") for text in files.values())


def _job(name: str, dice: random.Random) -> str:
    return (
        f'job {name} "Made-up job {name[4:]}"\n  use "catalogue.room"\n  use "rooms.room"\n  date 2026-11-25\n'
        f"  currency EUR\n  tax 20 %\n  overhead {dice.randint(5, 12)} %\n  labour two-fitters\n"
    )


def _room(name: str, dice: random.Random) -> str:
    wide, deep = dice.randint(1800, 6000), dice.randint(1800, 6000)
    height = dice.randint(2200, 3000)
    way = dice.choice(("glued vertical", "glued vertical start balanced", "on-battens horizontal bond half"))
    lines = [f'room {name} "Made-up room {name}"', f"  level l{name[0]}{name[1]}", f"  height {height}"]
    lines += [f"  on {dice.choice(('plasterboard', 'masonry', 'plaster'))}", f"  finish stone-long by {way}"]
    if dice.random() < 0.3:
        lines.append(f"  keep skirting {dice.randint(60, 140)}")
    if dice.random() < 0.2:
        lines += ["", f"  # measured twice, {dice.randint(1, 9)} mm apart"]
    if dice.random() < 0.25:
        step, notch = dice.randint(500, wide - 800), dice.randint(500, 2500)
        sides = [wide, deep, wide - step, notch, step, deep + notch]
    else:
        sides = [wide, deep, wide, deep]
    unsure = dice.random() < 0.1
    for index, side in enumerate(sides):
        about = "about " if unsure and index in (1, len(sides) - 1) else ""
        lines.append(f"  wall {'abcdef'[index]} {about}{side}")
        if len(sides) == 6 and index == 3:
            lines.insert(len(lines) - 1, "    corner outside")
        lines += _on_wall(side, index == 0, dice)
    return "\n".join(lines) + "\n"


def _on_wall(side: int, first: bool, dice: random.Random) -> list[str]:
    lines = []
    if first:
        lines.append(f"    door {dice.choice((626, 726, 826))} x 2040 at {dice.randint(100, side - 930)}")
    elif side > 1400 and dice.random() < 0.3:
        width = dice.randint(400, 900)
        lines.append(
            f"    window {width} x {dice.randint(500, 1000)} at {dice.randint(100, side - width - 50)} sill 1000"
        )
    if side > 600 and dice.random() < 0.3:
        lines.append(f"    socket at {dice.randint(20, 80)} up 300")
    if dice.random() < 0.2:
        lines.append(f"    wet {dice.choice(('splash', 'direct'))} up 0 to {dice.randint(1800, 2100)}")
    if dice.random() < 0.15:
        lines.append(f"    on tile over plaster up 0 to {dice.randint(900, 1500)}")
    return lines
