"""What every table of the job file has in common."""

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """A table of the job file. Unknown keys are refused."""

    # Deferred: only the whole file is ever checked, so only its checker is built.
    model_config = ConfigDict(extra="forbid", arbitrary_types_allowed=True, defer_build=True)
