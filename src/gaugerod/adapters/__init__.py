"""Where the program meets the outside: files, SVG, PDF. One folder each."""
