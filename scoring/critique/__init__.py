"""From a judge's sheet to a written critique: a lexicon as data, one file a language, and how to order and join it."""
