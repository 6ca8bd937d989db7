"""A practice's book: records, the files they stand in, and what refers to what."""
