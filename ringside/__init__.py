"""The shell: Django rooms around the core in `scoring`."""
