"""From temperature, sun and humidity to the water that grass gives off: FAO-56, chapters 2 to 4; and rain that counts."""

from generator.season.equations.equation import ONE_DEGREE, ZERO_CELSIUS, Equation, EquationConstant

EVAPOTRANSPIRATION_EQUATIONS = (
    Equation(
        id="hargreaves",
        title="Reference evapotranspiration from temperature (Hargreaves and Samani)",
        text="0.0023 * ((minimum_temperature - zero_celsius + (maximum_temperature - minimum_temperature) / 2) / one_degree + 17.8)"
        " * sqrt((maximum_temperature - minimum_temperature) / one_degree)"
        " * extraterrestrial_radiation / latent_heat / water_density",
        inputs={
            "minimum_temperature": "°C", "maximum_temperature": "°C", "extraterrestrial_radiation": "MJ/m2/day",
        },
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "one_degree": ONE_DEGREE,
            "latent_heat": EquationConstant(2.45, "MJ/kg", "heat that evaporates a kilogram of water"),
            "water_density": EquationConstant(1000, "kg/m3", "density of water"),
        },
        result_unit="mm/day",
        source="fao56",
        where="equation 52",
        limits="Made for means over five days or more; reads high in humid and low in windy, dry weather. FAO-56 prefers "
        "Penman-Monteith, which this book uses where the normals carry hours of sunshine.",
    ),
    Equation(
        id="saturation-vapour-pressure",
        title="Saturation vapour pressure",
        text="0.6108 * one_kilopascal * exp(17.27 * (temperature - zero_celsius) / (temperature - zero_celsius + offset))",
        inputs={"temperature": "°C"},
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "offset": EquationConstant(237.3, "K", "constant of the Tetens form"),
            "one_kilopascal": EquationConstant(1, "kPa", "one kilopascal"),
        },
        result_unit="kPa",
        source="fao56",
        where="equation 11",
        limits="Over water, -20 to 50 °C (our limit).",
    ),
    Equation(
        id="actual-vapour-pressure",
        title="Water vapour in the air, from the humidity of the afternoon",
        text="relative_humidity * saturation_vapour_pressure",
        inputs={"relative_humidity": "%", "saturation_vapour_pressure": "kPa"},
        result_unit="kPa",
        source="fao56",
        where="the afternoon half of equation 17: humidity at 15:00 is taken for the day's lowest, at the day's maximum temperature",
        limits="The paper averages this with the same for dawn, which our normals lack; in its examples 5 and 18 the afternoon alone is "
        "1 and 15 % above that. Means of a month stand for its days, so hot, dry days and cool, damp ones are not told apart.",
    ),
    Equation(
        id="vapour-pressure-slope",
        title="How fast saturation vapour pressure rises with temperature",
        text="slope_constant * saturation_vapour_pressure / (temperature - zero_celsius + offset)**2",
        inputs={"temperature": "°C", "saturation_vapour_pressure": "kPa"},
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "offset": EquationConstant(237.3, "K", "constant of the Tetens form"),
            "slope_constant": EquationConstant(4098, "K", "17.27 times 237.3, as the paper rounds it"),
        },
        result_unit="kPa/K",
        source="fao56",
        where="equation 13",
        limits="At the mean temperature; as for the saturation vapour pressure.",
    ),
    Equation(
        id="atmospheric-pressure",
        title="Pressure of the air at an elevation",
        text="sea_level * ((293 - 0.0065 * elevation / one_metre) / 293)**5.26",
        inputs={"elevation": "m"},
        constants={
            "sea_level": EquationConstant(101.3, "kPa", "pressure of the air at the sea"),
            "one_metre": EquationConstant(1, "m", "one metre"),
        },
        result_unit="kPa",
        source="fao56",
        where="equation 7",
        limits="A standard atmosphere at 20 °C; the weather's highs and lows do not matter here.",
    ),
    Equation(
        id="psychrometric-constant",
        title="Psychrometric constant",
        text="0.000665 / one_degree * atmospheric_pressure",
        inputs={"atmospheric_pressure": "kPa"},
        constants={"one_degree": ONE_DEGREE},
        result_unit="kPa/K",
        source="fao56",
        where="equation 8",
        limits="For the latent heat of 2.45 MJ/kg, water at about 20 °C.",
    ),
    Equation(
        id="soil-heat-flux-of-month",
        title="Heat that goes into the soil over a month",
        text="0.07 * one_megajoule * (temperature_of_next_month - temperature_of_month_before) / one_degree",
        inputs={"temperature_of_month_before": "°C", "temperature_of_next_month": "°C"},
        constants={
            "one_degree": ONE_DEGREE,
            "one_megajoule": EquationConstant(1, "MJ/m2/day", "one megajoule a square metre a day"),
        },
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 43",
        limits="For means of months; over a single day it is near nothing.",
    ),
    Equation(
        id="penman-monteith",
        title="Reference evapotranspiration (FAO Penman-Monteith)",
        text="(0.408 * vapour_pressure_slope / psychrometric_constant * (net_radiation - soil_heat_flux) / one_megajoule"
        " + 900 / ((mean_temperature - zero_celsius) / one_degree + 273) * wind_speed / one_metre_a_second"
        " * (saturation_vapour_pressure - actual_vapour_pressure) / one_kilopascal)"
        " / (vapour_pressure_slope / psychrometric_constant + 1 + 0.34 * wind_speed / one_metre_a_second) * one_millimetre_a_day",
        inputs={
            "mean_temperature": "°C", "net_radiation": "MJ/m2/day", "soil_heat_flux": "MJ/m2/day", "wind_speed": "m/s",
            "saturation_vapour_pressure": "kPa", "actual_vapour_pressure": "kPa", "vapour_pressure_slope": "kPa/K",
            "psychrometric_constant": "kPa/K",
        },
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "one_degree": ONE_DEGREE,
            "one_kilopascal": EquationConstant(1, "kPa", "one kilopascal"),
            "one_megajoule": EquationConstant(1, "MJ/m2/day", "one megajoule a square metre a day"),
            "one_metre_a_second": EquationConstant(1, "m/s", "one metre a second"),
            "one_millimetre_a_day": EquationConstant(1, "mm/day", "one millimetre a day"),
        },
        result_unit="mm/day",
        source="fao56",
        where="equation 6, top and bottom divided by the psychrometric constant",
        limits="For grass of 0.12 m that never lacks water. Where wind is not measured the paper takes 2 m/s: its example 20 finds "
        "about 7 % less with 1 m/s and 6 % more with 3 m/s.",
    ),
    Equation(
        id="effective-rain",
        title="Effective rain of a month",
        text="rain * (125 - 0.2 * rain / one_millimetre) / 125 if rain <= 250 * one_millimetre else 125 * one_millimetre + 0.1 * rain",
        inputs={"rain": "mm"},
        constants={"one_millimetre": EquationConstant(1, "mm", "one millimetre")},
        result_unit="mm",
        source="usda-effective-rain",
        where="monthly formula",
        limits="Fits a soil balance well where the soil drains freely and poorly where it does not (Patwardhan, Nieber and Johns 1990, "
        "J. Irrig. Drain. Eng. 116, abstract read). Made for crops in deep soil and for mean months: a shallow-rooted lawn on sand "
        "uses less of a heavy fall, and a year is never the mean.",
    ),
)
