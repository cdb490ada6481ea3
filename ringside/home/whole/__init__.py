"""Everything of one show in one file, and back: which rows belong to a show, how they are written, how they return.

The file is a ZIP archive: `show.json` (its schema: `manage.py show_out --schema`) and the photos in `files/`. Ids in it
are its own, counted from 1 in each table, so that the same show gives the same file wherever it is kept.
"""
