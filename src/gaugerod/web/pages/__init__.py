"""The pages: each a folder with its view, its context and its template."""
