"""Swardbook: a practice book for turf, generated from structured data."""
