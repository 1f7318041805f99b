"""Sheets and drawings as data: what is on the page, in model millimetres; writers turn it into bytes."""
