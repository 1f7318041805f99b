"""Price lists in, orders out: CSV, JSON, and a spreadsheet with its formulas live."""
