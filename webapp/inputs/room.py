"""What a person enters of the room."""

from webapp.inputs.entry import Input

ROOM = (
    Input(
        "air_temperature",
        "Air temperature",
        "room",
        "temperature",
        "Where the resin cures.",
        least="-40 degC",
        most="50 degC",
    ),
    Input(
        "surface_temperature",
        "Surface temperature",
        "room",
        "temperature",
        "Of the face itself, by a contact thermometer. Left blank: the air's.",
        least="-40 degC",
        most="80 degC",
        fallback_input="air_temperature",
    ),
    Input(
        "resin_temperature",
        "Resin temperature",
        "room",
        "temperature",
        "In the bottle, if it stood elsewhere. Left blank: the air's.",
        least="-40 degC",
        most="80 degC",
        fallback_input="air_temperature",
    ),
    Input(
        "relative_humidity", "Humidity", "room", "share", "Relative humidity of the air.", "%", "1 %", "100 %"
    ),
    Input(
        "lowest_tonight",
        "Tonight's lowest",
        "room",
        "temperature",
        "If the room cools down overnight.",
        least="-40 degC",
        most="50 degC",
    ),
    Input(
        "hygrometer_error",
        "Hygrometer error",
        "room",
        "share",
        "Of full scale; shown beside the dew margin (our choice).",
        "%",
        "0 %",
        "20 %",
        "5 %",
    ),
)
