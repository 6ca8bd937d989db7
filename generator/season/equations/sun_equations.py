"""Where the sun stands, how long it is up, and what it sends: FAO-56, chapter 3, and an almanac's day."""

from generator.season.equations.equation import ONE_DEGREE, ZERO_CELSIUS, Equation, EquationConstant

SUN_EQUATIONS = (
    Equation(
        id="solar-declination",
        title="Declination of the sun",
        text="0.409 * sin(2 * pi / 365 * day_of_year - 1.39)",
        inputs={"day_of_year": "1"},
        result_unit="rad",
        source="fao56",
        where="equation 24",
        limits="A year of 365 days; within half a degree of the almanac (our estimate).",
    ),
    Equation(
        id="inverse-distance",
        title="Inverse relative distance of earth and sun",
        text="1 + 0.033 * cos(2 * pi / 365 * day_of_year)",
        inputs={"day_of_year": "1"},
        result_unit="1",
        source="fao56",
        where="equation 23",
        limits="A year of 365 days.",
    ),
    Equation(
        id="sunset-hour-angle",
        title="Hour angle of sunset",
        text="acos(max(-1, min(1, -tan(latitude) * tan(solar_declination))))",
        inputs={"latitude": "deg", "solar_declination": "rad"},
        result_unit="rad",
        source="fao56",
        where="equation 25",
        limits="Held between 0 and pi, so that polar night and midnight sun have an answer; the paper stops at the polar circles.",
    ),
    Equation(
        id="daylight",
        title="Length of the day",
        text="half_day / pi * 2 * sunset_hour_angle",
        inputs={"sunset_hour_angle": "rad"},
        constants={"half_day": EquationConstant(12, "h", "half of 24 hours")},
        result_unit="h",
        source="fao56",
        where="equation 34",
        limits="Sun's centre on a level horizon without refraction, and a simple declination: up to 13 minutes out at 53 degrees against "
        "an almanac's sun. Made for radiation; what readers see is the length from sunrise to sunset.",
    ),
    Equation(
        id="sine-of-seasons-declination",
        title="Sine of the sun's declination, as almanacs have it",
        text="sin(23.43 * pi / 180) * sin((280.459 + 0.98564736 * (9130.75 + day_of_year)"
        " + 1.915 * sin((357.529 + 0.98560028 * (9130.75 + day_of_year)) * pi / 180)"
        " + 0.020 * sin(2 * (357.529 + 0.98560028 * (9130.75 + day_of_year)) * pi / 180)) * pi / 180)",
        inputs={"day_of_year": "1"},
        result_unit="1",
        source="usno-sun",
        where="approximate solar coordinates; days are counted to the mean of the years 2025 to 2028",
        limits="A calendar without a leap day stands for four years, so one year's date may be half a day out; good for this century.",
    ),
    Equation(
        id="day-length",
        title="From sunrise to sunset",
        text="half_day / pi * 2 * acos(max(-1, min(1, (sin(horizon) - sin(latitude) * sine_of_declination)"
        " / (cos(latitude) * sqrt(1 - sine_of_declination**2)))))",
        inputs={"latitude": "deg", "sine_of_declination": "1"},
        constants={
            "half_day": EquationConstant(12, "h", "half of 24 hours"),
            "horizon": EquationConstant(-0.8333, "deg", "the sun's centre when its upper edge shows, lifted by the air: 50 minutes of arc"),
        },
        result_unit="h",
        source="usno-sun",
        where="zenith of 90 degrees 50 minutes at sunrise and sunset",
        limits="A level horizon at the height of the eye. Up to a quarter of an hour longer than FAO-56's day, which has no air to lift "
        "the sun.",
    ),
    Equation(
        id="extraterrestrial-radiation",
        title="Radiation of the sun above the atmosphere",
        text="solar_constant / pi * inverse_distance * (sunset_hour_angle * sin(latitude) * sin(solar_declination)"
        " + cos(latitude) * cos(solar_declination) * sin(sunset_hour_angle))",
        inputs={
            "latitude": "deg", "solar_declination": "rad", "sunset_hour_angle": "rad", "inverse_distance": "1",
        },
        constants={"solar_constant": EquationConstant(0.0820, "MJ/m2/min", "solar constant")},
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 21",
        limits="Level ground; what reaches the lawn is less, by cloud, haze and shade.",
    ),
    Equation(
        id="solar-radiation-from-sunshine",
        title="Radiation of the sun at the ground, from hours of sunshine",
        text="(0.25 + 0.50 * sunshine / daylight) * extraterrestrial_radiation",
        inputs={"sunshine": "h", "daylight": "h", "extraterrestrial_radiation": "MJ/m2/day"},
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 35 (Angstrom), with a = 0.25 and b = 0.50",
        limits="The two shares are the paper's, for places without their own; haze and high ground shift them.",
    ),
    Equation(
        id="clear-sky-radiation",
        title="Radiation of the sun at the ground under a clear sky",
        text="(0.75 + 0.00002 * elevation / one_metre) * extraterrestrial_radiation",
        inputs={"elevation": "m", "extraterrestrial_radiation": "MJ/m2/day"},
        constants={"one_metre": EquationConstant(1, "m", "one metre")},
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 37",
        limits="For clean, dry air; smoke and damp haze let less through.",
    ),
    Equation(
        id="net-longwave-radiation",
        title="Heat that the ground sends back to the sky",
        text="black_body * (((minimum_temperature - zero_celsius) / one_degree / 1000 + 0.27316)**4"
        " + ((maximum_temperature - zero_celsius) / one_degree / 1000 + 0.27316)**4) / 2"
        " * (0.34 - 0.14 * sqrt(actual_vapour_pressure / one_kilopascal))"
        " * (1.35 * min(1, solar_radiation / clear_sky_radiation) - 0.35)",
        inputs={
            "minimum_temperature": "°C", "maximum_temperature": "°C", "actual_vapour_pressure": "kPa",
            "solar_radiation": "MJ/m2/day", "clear_sky_radiation": "MJ/m2/day",
        },
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "one_degree": ONE_DEGREE,
            "one_kilopascal": EquationConstant(1, "kPa", "one kilopascal"),
            "black_body": EquationConstant(4903, "MJ/m2/day", "what a black body sends out at 1000 kelvin (Stefan-Boltzmann)"),
        },
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 39; the fourth powers are taken in thousands of kelvin, which moves no digit",
        limits="For grass about as warm as the air; fitted to clear and partly cloudy days.",
    ),
    Equation(
        id="net-radiation",
        title="Radiation that the grass keeps",
        text="(1 - 0.23) * solar_radiation - net_longwave_radiation",
        inputs={"solar_radiation": "MJ/m2/day", "net_longwave_radiation": "MJ/m2/day"},
        result_unit="MJ/m2/day",
        source="fao56",
        where="equations 38 and 40, with the 0.23 that reference grass reflects",
        limits="For green grass; dormant, straw-coloured turf reflects more.",
    ),
)
