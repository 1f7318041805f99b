"""Sheets to tagged PDF (PDF/UA-1), by typst. The data goes in as data: nothing of a job is ever read as markup."""
