"""Where the files that come with the kit are found: templates, demo job, sample shop.

The same functions serve a wheel, where the templates lie inside the package, and a checkout or an
editable install, where they stand in `notebooks/job` at the top of the repository. All are read-only:
copy them, never write to them.
"""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def template_dir() -> Path:
    """The folder of notebooks that a new job starts from.

    Returns:
        The folder; its notebooks are in the order of the work.

    Raises:
        FileNotFoundError: the installation has lost its templates.

    Examples:
        >>> template_dir().is_dir()
        True
    """
    carried = _PACKAGE / "templates"
    return _present(carried if carried.exists() else _PACKAGE.parents[1] / "notebooks" / "job")


def demo_job_file() -> Path:
    """The demo job (invented): the drive shaft of a grain auger.

    Returns:
        The `job.json` of a job folder that holds nothing else.

    Raises:
        FileNotFoundError: the installation has lost its demo job.

    Examples:
        >>> demo_job_file().name
        'job.json'
    """
    return _present(_PACKAGE / "data" / "demo" / "job.json")


def sample_shop_file() -> Path:
    """The sample shop (invented): one lathe, its dials, cutters, gauges, bar rack and rates.

    Returns:
        A shop file in TOML.

    Raises:
        FileNotFoundError: the installation has lost its sample shop.

    Examples:
        >>> sample_shop_file().name
        'sample-shop.toml'
    """
    return _present(_PACKAGE / "data" / "sample-shop.toml")


def _present(path: Path) -> Path:
    if not path.exists():
        raise FileNotFoundError(f"{path.name} is missing from this installation of Handwheel; install the kit again.")
    return path
