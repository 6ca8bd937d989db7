"""Builds a book into a site and puts it in its place; packs it; says what in a stranger's book could run."""
