"""The foot of a sheet that is about the whole job and not one slope."""

from gaugerod.job.result import Result
from gaugerod.sheets.setting_out_sheet import DISCLAIMER


def job_foot(result: Result) -> str:
    """The job, the edition, the version, and what a sheet is not."""
    title = result.job.title if len(result.job.title) <= 72 else f"{result.job.title[:71]}…"
    return f"{title} · edition {result.job.edition.value} · gaugerod {result.version}\n{DISCLAIMER}"
