"""The settings of a repository: `roomspec.toml` at its root, read through the World by the command and the editor.

baseline = "baseline.json"

[checks]
narrow-strip = "error"
no-gap = "off"
"""

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from roomspec.analysis.found import Found, FoundEdit, FoundFix, Place
from roomspec.analysis.gather import decode, resolved
from roomspec.analysis.world import World
from roomspec.checks.choosing import CHOICES, OFF, chosen, refused
from roomspec.text.nearness import nearest

FILE = "roomspec.toml"
KEYS = ("baseline", "checks")
_AT = re.compile(r" \(at line (\d+), column (\d+)\)$")


class Settings(Struct, frozen=True):
    """What the repository chose, and what is wrong in the file; a line that is wrong counts for nothing.

    `choices` holds (check, severity or `off`). `baseline` is a path relative to the root, "" where there is none.
    """

    choices: tuple[tuple[str, str], ...] = ()
    baseline: str = ""
    problems: tuple[Found, ...] = ()


def settings_of(world: World) -> Settings:
    """The settings at the root of the World; without the file, those that change nothing."""
    data = world.read(FILE)
    return Settings() if data is None else read_settings(data)


def as_chosen(found: Iterable[Found], settings: Settings) -> Iterable[Found]:
    """The findings with the severities that the settings give them, less those switched off."""
    choices = dict(settings.choices)
    for one in found:
        severity = chosen(one.name, one.severity, choices) if one.name in choices else one.severity
        if severity != OFF:
            yield one if severity == one.severity else replace(one, severity=severity)


@lru_cache(8)
def read_settings(data: bytes) -> Settings:
    """The settings that the bytes of the file hold; each mistake is a finding at its line."""
    import tomllib

    text, trouble = decode(data)
    if trouble:
        return Settings(problems=(_wrong(trouble, _at("", 0, 0)),))
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as mistake:
        return Settings(problems=(_no_toml(str(mistake), text),))
    except RecursionError:
        return Settings(problems=(_wrong("this is nested too deeply to be settings", _at("", 0, 0)),))
    problems: list[Found] = []
    for key in table:
        if key not in KEYS:
            problems.append(_unknown(f"there is no setting `{key}`", key, KEYS, "the settings are", _key(text, key)))
    choices = _choices(table.get("checks", {}), text, problems)
    return Settings(choices, _baseline(table.get("baseline", ""), text, problems), tuple(problems))


def no_baseline(data: bytes, reason: str) -> Found:
    """The finding at the `baseline` of the settings' file that the file named there `reason`s."""
    text, _ = decode(data)
    help_ = "write it again with `roomspec check --write-baseline`, or take this line out"
    return _wrong(f"the baseline {reason}; nothing is set aside", _key(text, "baseline"), help_)


def _choices(table: Any, text: str, problems: list[Found]) -> tuple[tuple[str, str], ...]:
    if not isinstance(table, Mapping):
        help_ = 'write a heading `[checks]`, and under it lines such as `narrow-strip = "error"`'
        problems.append(_wrong("`checks` is a heading with a line for each check", _key(text, "checks"), help_))
        return ()
    from roomspec.checks.registry import every_record

    names = [check.name for check in every_record()]
    kept: list[tuple[str, str]] = []
    for name, choice in table.items():
        place = _key(text, name, "checks")
        if name not in names:
            help_ = "`roomspec explain --all` lists them"
            problems.append(_unknown(f"no check is called {name}", name, names, help_, place))
        elif choice not in CHOICES:
            told = '"error", "warning", "hint" or "off"'
            said = f'{name} = "{choice}"' if isinstance(choice, str) else f"{name} = {str(choice).lower()}"
            problems.append(
                _wrong(f"`{said}`: a check is set to {told}", place, f"write `{name} = ...` with one of them")
            )
        elif why := refused(name, choice):
            problems.append(_wrong(why, place, "mend what it finds, and take this line out"))
        else:
            kept.append((name, choice))
    return tuple(kept)


def _baseline(value: Any, text: str, problems: list[Found]) -> str:
    path = resolved(FILE, value) if isinstance(value, str) and value else ""
    if (isinstance(value, str) and path is not None) or value == "":
        return path or ""
    help_ = 'write `baseline = "baseline.json"`, a path from the repository\'s root'
    problems.append(_wrong("`baseline` is not a file inside the repository", _key(text, "baseline"), help_))
    return ""


def _no_toml(said: str, text: str) -> Found:
    found = _AT.search(said)
    lines = text.split("\n")
    line, column = (int(found[1]), int(found[2])) if found else (len(lines), len(lines[-1]) + 1)
    reason = _AT.sub("", said).removesuffix(" (at end of document)")
    message = f"these settings are not TOML: {reason[:1].lower()}{reason[1:]}; none of them holds"
    end = min(column + 1, max(column, len(lines[line - 1]) + 1 if line <= len(lines) else 1))
    return _wrong(message, Place(FILE, line, column, line, end))


def _unknown(message: str, word: str, known: Iterable[str], help_: str, place: Place) -> Found:
    known = tuple(known)
    near = nearest(word, known)
    if near:
        told = f"did you mean {' or '.join(f'`{name}`' for name in near)}?"
        fixes = tuple(FoundFix(f"write `{name}`", False, (FoundEdit(place, name),)) for name in near)
        return _wrong(message, place, told, fixes)
    return _wrong(message, place, help_ if "`" in help_ else f"{help_} {', '.join(f'`{name}`' for name in known)}")


def _wrong(message: str, place: Place, help_: str = "", fixes: tuple[FoundFix, ...] = ()) -> Found:
    return Found("unusable-setting", "error", message, place, help_, fixes=fixes)


def _key(text: str, key: str, heading: str = "") -> Place:
    """Where a key stands: the first line that sets it, under its heading where there is one (tomllib does not tell)."""
    under = re.search(rf"^[ \t]*\[[ \t]*{heading}[ \t]*\]", text, re.MULTILINE) if heading else None
    word = re.escape(key)
    setting = re.compile(rf"""(?<![\w-])["']?({word})["']?[ \t]*(?==|\]|\.)""")
    found = setting.search(text, under.end() if under else 0)
    return _at(text, found.start(1), found.end(1)) if found else _at(text, 0, 0)


def _at(text: str, start: int, end: int) -> Place:
    line = text.count("\n", 0, start) + 1
    first = text.rfind("\n", 0, start) + 1
    return Place(FILE, line, start - first + 1, line, end - first + 1)
