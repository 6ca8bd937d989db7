"""What files, keys and words of a book are called now that were called otherwise in an earlier edition; messages name the new one."""

FILES = {"visit.yml": "inspection.yml"}
KEYS = {"crew_size": "people", "quote_valid_days": "estimate_valid_days", "quote": "estimate"}
WORDS = {"crew": "hands"}
