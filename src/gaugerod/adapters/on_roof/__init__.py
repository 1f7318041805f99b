"""The job on the roof: one page in one file, to keep on a phone and work from without a signal."""
