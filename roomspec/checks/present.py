"""What a room has. A check that needs something is not asked about a room that has none of it."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from roomspec.checks.held import FRAMES, hangs_on_glue
from roomspec.checks.used import shortest_trim, trims_of
from roomspec.layout.access import longest_piece
from roomspec.model.room import Room
from roomspec.model.shape import Region
from roomspec.model.wall import Ceiling, Finish, Substrate, Surface, Wall

WORDS = {
    "openings": "a door, a window or the like",
    "several openings": "a face with two of them",
    "obstacles": "what stands against a wall, or a box",
    "boxing": "a box",
    "joints up": "a height at which upright panels meet",
    "rise": "a floor that is not level",
    "ceiling": "a ceiling",
    "diagonals": "a measured diagonal",
    "access": "the longest piece that can be got in",
    "lined": "an opening with a lined reveal",
    "points": "a socket, a switch, a pipe or a fixture, or something to be removed at a place",
    "wired": "a socket or a switch",
    "load": "a fixture whose weight is stated",
    "heat": "a heat source",
    "water": "a bath, a tray or direct water",
    "wet": "a wet region",
    "direct": "one that water falls on directly",
    "flatness": "a measured deviation",
    "lean": "a wall with two widths",
    "outside": "an outside corner",
    "regions": "a line for a part of a face",
    "layers": "a face with several substrates, or one that something comes off",
    "bare frame": "a frame that no board covers for sure",
    "substrate unsaid": "a face without one substrate for all of it",
    "surface unsaid": "a face without one surface for all of it",
    "doubtful": "tile, or a surface that is not sound",
    "several finishes": "a wall with two finishes",
    "upright": "panels that stand",
    "flat": "panels that lie flat",
    "bond": "rows that break joint",
    "glue": "panels on glue",
    "glue alone": "panels that nothing else holds",
    "screw": "a screw or a fixing",
    "battens": "panels on battens, or a face with studs",
    "mitred": "a method that mitres",
    "expands": "panels that expand",
    "tight": "panels without gap or trim at the floor or the ceiling",
    "numbered": "panels in numbered sets",
    "misfit": "a trim that is not made for just this thickness",
    "plain ends": "panels whose end joints are open",
    "tall": "a wall higher than panels of the room are long, or can be got in",
    "short trim": "a wall higher than a trim of the room is long",
    "uneven": "walls that begin at different heights",
    "approximate": "what is measured only about",
    "other way": "panels that run a way that their maker does not name",
    "bare corner": "a method that names nothing for outside corners",
    "bare edge": "a lining that may end without a trim",
}
"""What a check may need, and what it means. A word may stand for more than is so, never for less."""


def present(room: Room) -> frozenset[str]:
    """The words that hold in a room."""
    found: set[str] = set()
    # What many faces have in common is looked at once.
    faces: tuple[Wall | Ceiling, ...] = (*room.walls, *room.ceilings) if room.ceilings else room.walls
    for backing in {(face.substrates, face.surfaces, bool(face.removals)) for face in faces}:
        found.update(_of_behind(*backing))
    finishes = {finish for face in faces for finish in face.finishes}
    for finish in finishes:
        found.update(_of_finish(finish))
    tallest = max([y for wall in room.walls for _, y in wall.top], default=0)
    for finish in finishes:
        if tallest > longest_piece(finish.panel, room.access):
            found.add("tall")
        if tallest > shortest_trim(finish.method):
            found.add("short trim")
    if len({wall.top[0][1] for wall in room.walls}) > 1:
        found.add("uneven")
    for wall in room.walls:
        if not (wall.confirmed and wall.height_confirmed):
            found.add("approximate")
        if wall.width_top != wall.width:
            found.add("lean")
        if wall.corner.kind == "outside":
            found.add("outside")
        if wall.obstacles or wall.boxing:
            found.add("obstacles")
        if wall.joints_up:
            found.add("joints up")
        if len(wall.floor) > 2 or wall.floor[0][1] != wall.floor[-1][1]:
            found.add("rise")
        if wall.obstacles:
            found.update(_of_obstacles(wall))
        if wall.boxing:
            found.update(("bare edge", "boxing"))
            if not all(box.confirmed for box in wall.boxing):
                found.add("approximate")
        _of_face(wall, found)
    if room.ceilings:
        found.add("ceiling")
    for ceiling in room.ceilings:
        _of_face(ceiling, found)
        if not ceiling.confirmed:
            found.add("approximate")
    if room.diagonals:
        found.add("diagonals")
        if not all(diagonal.confirmed for diagonal in room.diagonals):
            found.add("approximate")
    if room.access is not None:
        found.add("access")
    if "bare corner" in found and ("outside" in found or "lined" in found):
        found.add("bare edge")
    return frozenset(found)


def _of_face(face: Wall | Ceiling, found: set[str]) -> None:
    if face.openings:
        found.add("openings")
        if len(face.openings) > 1:
            found.add("several openings")
        for opening in face.openings:
            if opening.lined:
                found.add("lined")
            if not opening.confirmed:
                found.add("approximate")
    for point in face.points:
        found.add("points")
        if point.kind in ("socket", "switch"):
            found.add("wired")
        if point.load:
            found.add("load")
    if face.wet:
        found.add("wet")
        _of_regions([wet.region for wet in face.wet], found)
        if any(wet.exposure == "direct" for wet in face.wet):
            found.update(("direct", "water"))
    if face.flatness:
        found.add("flatness")
        _of_regions([flat.region for flat in face.flatness], found)
    if face.studs:
        found.add("battens")
        _of_regions([studs.region for studs in face.studs], found)
    if face.removals or len(face.substrates) > 1:
        found.add("layers")
        _of_regions([removal.region for removal in face.removals], found)
    if face.removals and any(removal.x is not None for removal in face.removals):
        found.add("points")
    if len(face.finishes) > 1:
        found.add("several finishes")


def _of_regions(regions: Iterable[Region], found: set[str]) -> None:
    if not all(map(_is_whole, regions)):
        found.add("regions")


def _of_obstacles(wall: Wall) -> Iterator[str]:
    if not all(obstacle.confirmed for obstacle in wall.obstacles):
        yield "approximate"
    kinds = {obstacle.kind for obstacle in wall.obstacles}
    if not kinds.isdisjoint(("bath", "tray")):
        yield "water"
    if "heat" in kinds:
        yield "heat"


@lru_cache(2048)
def _of_behind(substrates: tuple[Substrate, ...], surfaces: tuple[Surface, ...], stripped: bool) -> frozenset[str]:
    """Of what is behind a face's linings; `stripped` where something comes off."""
    found = set[str]()
    if not any(_is_whole(substrate.region) for substrate in substrates):
        found.add("substrate unsaid")
    if not any(_is_whole(surface.region) for surface in surfaces):
        found.add("surface unsaid")
    kinds = [[layer.kind for layer in substrate.layers] for substrate in substrates]
    _of_regions([one.region for one in substrates] + [one.region for one in surfaces], found)
    if any(surface.condition != "sound" for surface in surfaces) or any("tile" in layers for layers in kinds):
        found.add("doubtful")
    if any(not FRAMES.isdisjoint(layers if stripped else layers[:1]) for layers in kinds):
        found.add("bare frame")
    return frozenset(found)


def _is_whole(region: Region) -> bool:
    return region == Region()


@lru_cache(2048)
def _of_finish(finish: Finish) -> frozenset[str]:
    """Of the panels, how they lie and how they are fixed."""
    panel, method = finish.panel, finish.method
    flat = finish.direction in ("horizontal", "crosswise")
    holds = {
        "regions": not _is_whole(finish.region),
        "flat": flat,
        "upright": not flat,
        "bond": finish.bond != "stacked",
        "other way": finish.direction not in panel.lay,
        "glue": method.glue is not None,
        "glue alone": hangs_on_glue(method),
        "screw": method.screw is not None or method.fix is not None,
        "battens": bool(method.battens),
        "mitred": "mitred" in (method.inside_corner, method.outside_corner),
        "expands": bool(panel.expands),
        "tight": not (method.gap("floor") or method.start)
        or not (method.gap("ceiling") or method.cornice or method.top),
        "numbered": panel.sequence > 1,
        "bare edge": method.edge is None,
        "bare corner": method.outside_corner in (None, "butted"),
        "misfit": any(trim.fits not in (None, panel.thick) for _, trim in trims_of(method)),
        "plain ends": panel.joined != "all edges" and method.joint is None,
    }
    return frozenset(word for word, is_so in holds.items() if is_so)
