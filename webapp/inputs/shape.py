"""What a person enters of the shape of a face or a cut-out."""

from webapp.inputs.entry import Input

SHAPES = (
    ("rectangle", "Rectangle"),
    ("rounded_rectangle", "Rounded rectangle"),
    ("circle", "Circle"),
    ("ring", "Ring"),
    ("ellipse", "Ellipse"),
    ("triangle", "Triangle"),
    ("polygon", "Regular polygon"),
    ("capsule", "Capsule"),
    ("half_round", "Half round"),
    ("arch_top", "Arched top"),
    ("trapezoid", "Trapezoid"),
    ("stroke", "Stroke"),
    ("lettering", "Lettering"),
    ("known", "Area already known"),
)

SHAPE = (
    Input("shape", "Shape", "shape", "choice", default="rectangle", options=SHAPES),
    Input("width", "Width", "shape", "length", "", None, "1 mm", "30 m"),
    Input("height", "Height", "shape", "length", "", None, "1 mm", "30 m"),
    Input("diameter", "Diameter", "shape", "length", "", None, "1 mm", "30 m"),
    Input("corner_radius", "Corner radius", "shape", "length", "", None, "0 mm", "15 m"),
    Input("outer_diameter", "Outer diameter", "shape", "length", "", None, "1 mm", "30 m"),
    Input("inner_diameter", "Inner diameter", "shape", "length", "", None, "0 mm", "30 m"),
    Input("base", "Base", "shape", "length", "One side; the height stands on it.", None, "1 mm", "30 m"),
    Input("side_count", "Sides", "shape", "count", "", "", "3", "100"),
    Input(
        "circumscribed_diameter",
        "Across the corners",
        "shape",
        "length",
        "Of the circle through the corners; an odd count is less wide than that.",
        None,
        "1 mm",
        "30 m",
    ),
    Input("length", "Length", "shape", "length", "Over all, round ends included.", None, "1 mm", "30 m"),
    Input("side_height", "Sides", "shape", "length", "Straight part, up to the arch.", None, "0 mm", "30 m"),
    Input("rise", "Rise", "shape", "length", "Of the arch over its ends.", None, "1 mm", "15 m"),
    Input("top_width", "Top width", "shape", "length", "", None, "0 mm", "30 m"),
    Input("bottom_width", "Bottom width", "shape", "length", "", None, "1 mm", "30 m"),
    Input(
        "stroke_length",
        "Length of the stroke",
        "shape",
        "length",
        "Along its middle.",
        None,
        "1 mm",
        "1000 m",
    ),
    Input("stroke_width", "Stroke", "shape", "length", "Across the stroke.", None, "0.5 mm", "2 m"),
    Input("stated_area", "Area", "shape", "area", "", None, "1 mm2", "900 m2"),
    Input(
        "stated_edge", "Edge", "shape", "length", "All around, if you need the edge.", None, "1 mm", "1000 m"
    ),
    Input("pieces", "Pieces", "shape", "count", "How many alike.", "", "1", "1000", "1"),
)

SHAPE_LETTERING = (
    Input("cap_height", "Cap height", "shape", "length", "Of a capital H.", None, "1 mm", "10 m"),
    Input(
        "glyph_area_sum",
        "Letters' area",
        "shape",
        "ratio",
        "All letters together, in squares of the cap height.",
        "",
        "0.001",
        "10000",
    ),
    Input(
        "glyph_edge_sum",
        "Letters' edge",
        "shape",
        "ratio",
        "All letters together, in cap heights.",
        "",
        "0.01",
        "100000",
    ),
)
