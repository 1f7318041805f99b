"""Where the kept jobs are: the user's data folder, by the rules of each platform."""

from collections.abc import Mapping
from pathlib import Path

FILE_NAME = "jobs.sqlite"
OVERRIDE = "GAUGEROD_DATA"
_FOLDER = "gaugerod"


def data_folder(*, given: str | None, environment: Mapping[str, str], platform: str, home: Path) -> Path:
    """The folder asked for, else the one in GAUGEROD_DATA, else the platform's own place for a user's data.

    ``platform`` as ``sys.platform`` names it. A relative XDG_DATA_HOME is ignored, as its specification asks
    (XDG Base Directory Specification, "Environment variables").

    >>> home = Path("/home/ann")
    >>> data_folder(given=None, environment={}, platform="linux", home=home).as_posix()
    '/home/ann/.local/share/gaugerod'
    >>> data_folder(given="van", environment={}, platform="linux", home=home).as_posix()
    'van'
    """
    if chosen := given or environment.get(OVERRIDE):
        return Path(chosen)
    if platform == "win32":
        local = environment.get("LOCALAPPDATA")
        return (Path(local) if local else home / "AppData" / "Local") / _FOLDER
    if platform == "darwin":
        return home / "Library" / "Application Support" / _FOLDER
    shared = environment.get("XDG_DATA_HOME", "")
    return (Path(shared) if Path(shared).is_absolute() else home / ".local" / "share") / _FOLDER
