"""How far two places lie apart."""

from math import asin, cos, radians, sin, sqrt

# Mean radius of the earth, (2a + b) / 3 of GRS 80: International Union of Geodesy and Geophysics, in Moritz 2000, Geodetic Reference System 1980,
# Journal of Geodesy 74.
EARTH_RADIUS_KM = 6371.0088


def great_circle_km(latitude_deg: float, longitude_deg: float, other_latitude_deg: float, other_longitude_deg: float) -> float:
    """Distance along the great circle between two points [km]; south and west are negative [°].

    The haversine formula, which stays exact for places close together. Source: Sinnott 1984, Virtues of the haversine, Sky and Telescope 68, 159.
    Limit: the earth is taken as a ball, so that it is off by up to half a per cent.
    """
    here, there = radians(latitude_deg), radians(other_latitude_deg)
    across = radians(other_longitude_deg - longitude_deg)
    haversine = sin((there - here) / 2) ** 2 + cos(here) * cos(there) * sin(across / 2) ** 2
    return 2 * EARTH_RADIUS_KM * asin(min(1.0, sqrt(haversine)))
