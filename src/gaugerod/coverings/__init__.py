"""What is laid: generic records, and records measured from the tile in the hand."""
