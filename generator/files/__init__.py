"""What leaves the engine as a file or on a terminal: JSON, calendars, tables, codes, text."""
