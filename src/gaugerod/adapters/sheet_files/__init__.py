"""Every sheet and drawing of a result, as files in a folder."""
