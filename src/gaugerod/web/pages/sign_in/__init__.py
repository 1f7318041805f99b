"""The passphrase."""
