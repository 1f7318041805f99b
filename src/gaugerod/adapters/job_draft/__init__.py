"""Jobs drafted from what other programs drew: outlines made tidy, and the job file written with what to check."""
