"""A drawing read back: what is built in exact nanometres, texts with the boxes that they cover at most."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import cos, radians, sin

from msgspec import Struct

from roomspec.reports.drawing.lettering import width_of

SVG = "{http://www.w3.org/2000/svg}"
CAPITALS = 0.6875
"""Capitals over the size of the letters, Liberation Sans (capHeight 1409 of 2048 units)."""


class ReadText(Struct, frozen=True):
    """A text: its words, the height of its capitals, its kind, and the corners of what it covers."""

    words: str
    height: float
    kind: str
    corners: tuple[tuple[float, float], ...]


class Shape(Struct, frozen=True):
    """A path as built: its kind, its attributes, its rings or lines in nanometres, and where its face lies on paper."""

    kind: str
    data: dict[str, str]
    face: str
    lines: tuple[tuple[tuple[int, int], ...], ...]
    closed: bool
    origin: tuple[float, float]
    scale: Fraction


def parsed(svg: str) -> ET.Element:
    """The root, or an error where the text is no XML."""
    return ET.fromstring(svg)


def texts_of(root: ET.Element) -> Iterator[ReadText]:
    """Every text, its font size taken from it or from its group."""
    for group in root.iter(f"{SVG}g"):
        for text in group.findall(f"{SVG}text"):
            size = float(text.get("font-size") or group.attrib["font-size"])
            yield _text(text, size)


def _text(element: ET.Element, size: float) -> ReadText:
    words, x, y = element.text or "", float(element.attrib["x"]), float(element.attrib["y"])
    wide = width_of(words, size * CAPITALS)
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[element.get("text-anchor", "start")]
    # Liberation's and DejaVu's digits and capitals reach 0.76 of the size up, and below the line only what hangs does.
    high, low = y - 0.76 * size, y + (0.24 * size if re.search(r"[gjpqy,;()\[\]Q|@_$/\\]", words) else 0)
    corners = ((left, high), (left + wide, high), (left + wide, low), (left, low))
    turned = re.fullmatch(r"rotate\((\S+) (\S+) (\S+)\)", element.get("transform", "rotate(0 0 0)"))
    assert turned is not None
    angle, cx, cy = (float(part) for part in turned.groups())
    c, s = cos(radians(angle)), sin(radians(angle))
    placed = tuple((cx + (px - cx) * c - (py - cy) * s, cy + (px - cx) * s + (py - cy) * c) for px, py in corners)
    return ReadText(words, size * CAPITALS, element.get("class", ""), placed)


def shapes_of(root: ET.Element) -> Iterator[Shape]:
    """Every path that is drawn in millimetres as built."""
    for group in root.iter(f"{SVG}g"):
        if group.get("class") != "as-built":
            continue
        found = re.fullmatch(r"translate\((\S+) (\S+)\) scale\((\S+) -(\S+)\)", group.attrib["transform"])
        assert found is not None
        assert found[3] == found[4]
        for path in group.findall(f"{SVG}path"):
            data = {key: value for key, value in path.attrib.items() if key.startswith("data-")}
            lines, closed = _lines(path.attrib["d"])
            origin, scale = (float(found[1]), float(found[2])), Fraction(Decimal(found[3]))
            yield Shape(path.attrib["class"], data, group.attrib["data-face"], lines, closed, origin, scale)


def _lines(d: str) -> tuple[tuple[tuple[tuple[int, int], ...], ...], bool]:
    parts = [part for part in re.split("[MZ]", d) if part]
    return tuple(tuple(_place(place) for place in part.split("L")) for part in parts), "Z" in d


def _place(text: str) -> tuple[int, int]:
    x, y = (Decimal(part) * 1_000_000 for part in text.split())
    assert x == int(x)
    assert y == int(y)
    return int(x), int(y)
