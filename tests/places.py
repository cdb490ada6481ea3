"""Where this machine has Chromium and PostgreSQL, if it has them."""

import os
import shutil

import psycopg

LOCAL_POSTGRES = "postgresql://postgres@127.0.0.1:5432/postgres"


def chromium() -> str | None:
    named = os.environ.get("CHROMIUM")
    return named or next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)


def postgres() -> str | None:
    """Address of a server that answers and lets us make databases, or nothing."""
    address = os.environ.get("TEST_POSTGRES_URL") or LOCAL_POSTGRES
    try:
        with psycopg.connect(address, connect_timeout=3) as connection:
            found = connection.execute("select rolcreatedb or rolsuper from pg_roles where rolname = current_user")
            row = found.fetchone()
    except psycopg.Error:
        return None
    return address if row and row[0] else None


def libre_office() -> str | None:
    named = os.environ.get("SOFFICE")
    return named or next(filter(None, map(shutil.which, ("soffice", "libreoffice"))), None)
