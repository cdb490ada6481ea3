"""Accounts, contacts and sign-in."""
