"""What the sheet holds that nobody meets yet, and the issue that brings it to a person.

Each of these issues takes its own rows away; the last one finds the table empty.
"""

ESTIMATOR = "Coverage estimator: from words, from a drawing, from a tape measure"
RECORDS = "Jobs and records: cost, order, labels, the next sign that matches, and what went wrong"

MET_LATER = {
    "spread_area": ESTIMATOR,
    "depth_from_volume": ESTIMATOR,
    "volume_on_hand": ESTIMATOR,
    "colour_mix": RECORDS,
    "usable_stock": RECORDS,
    "kits_to_buy": RECORDS,
    "kit_cost": RECORDS,
    "left_over": RECORDS,
    "colour_cost": RECORDS,
    "face_cost": RECORDS,
    "labour_cost": RECORDS,
    "job_cost": RECORDS,
    "stock_short": RECORDS,
    "stock_a": RECORDS,
    "stock_b": RECORDS,
    "kit_volume": RECORDS,
    "kit_price": RECORDS,
    "labour_time": RECORDS,
    "wage": RECORDS,
}
