"""The one table of what a person enters: it feeds the forms, the phone's field checks and the job file.

Each row gives the input's name, what it is called on the screen, where it is entered, its kind of
quantity, the unit of a bare number, bounds, default and a line of help. A default is shown as such and
can be changed; `fallback_input` means "not measured: the other input's value".
"""

from webapp.inputs.bench import BENCH, BENCH_FILM
from webapp.inputs.card import CARD
from webapp.inputs.colour import COLOUR, COLOUR_HIDING
from webapp.inputs.entry import Input
from webapp.inputs.face import FACE, FACE_EDGE
from webapp.inputs.flow import CARD_FILM
from webapp.inputs.kinetics import CARD_KINETICS
from webapp.inputs.room import ROOM
from webapp.inputs.shape import SHAPE, SHAPE_LETTERING

INPUTS: dict[str, Input] = {
    row.name: row
    for row in (
        *ROOM,
        *CARD,
        *CARD_FILM,
        *CARD_KINETICS,
        *BENCH,
        *BENCH_FILM,
        *COLOUR,
        *COLOUR_HIDING,
        *SHAPE,
        *SHAPE_LETTERING,
        *FACE,
        *FACE_EDGE,
    )
}
