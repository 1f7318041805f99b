"""Leaving: the page of the question; its view stands with the passphrase."""
