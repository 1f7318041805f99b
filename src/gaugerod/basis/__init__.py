"""What every stage stands on: lengths, rounding, citations, findings, the working and the errors."""
