"""Plan outlines from DXF drawings; the reading itself is done by an optional part."""
