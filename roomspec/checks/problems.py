"""The problems of reading, which the front end finds: here only what is said about them."""

from roomspec.checks.record import Check
from roomspec.checks.rules.reading.duplicate_name import duplicate_name
from roomspec.checks.rules.reading.file_in_no_job import file_in_no_job
from roomspec.checks.rules.reading.idle_allow import idle_allow
from roomspec.checks.rules.reading.impossible_value import impossible_value
from roomspec.checks.rules.reading.misplaced_line import misplaced_line
from roomspec.checks.rules.reading.missing_line import missing_line
from roomspec.checks.rules.reading.repeated_line import repeated_line
from roomspec.checks.rules.reading.unknown_name import unknown_name
from roomspec.checks.rules.reading.unreadable_line import unreadable_line
from roomspec.checks.rules.reading.unusable_setting import unusable_setting
from roomspec.checks.rules.reading.unused_name import unused_name
from roomspec.checks.rules.reading.use_finds_nothing import use_finds_nothing
from roomspec.checks.rules.reading.use_outside_repository import use_outside_repository
from roomspec.checks.rules.reading.wrong_unit import wrong_unit

PROBLEMS: tuple[Check, ...] = (
    unreadable_line,
    misplaced_line,
    wrong_unit,
    unknown_name,
    duplicate_name,
    missing_line,
    repeated_line,
    impossible_value,
    use_outside_repository,
    use_finds_nothing,
    file_in_no_job,
    unused_name,
    idle_allow,
    unusable_setting,
)
