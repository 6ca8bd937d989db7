"""The season engine: a grass at a place through a year. `year.py` begins it; `season_cache.py` asks it of a book."""
