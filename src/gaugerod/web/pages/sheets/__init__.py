"""Sheets, drawings and share links."""
