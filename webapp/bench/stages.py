"""The stages of the bench, in one table: what a cup walks through, from the gloves to the top coat."""

from webapp.bench.ready import READY_LINES
from webapp.bench.stage import (
    CONTACT,
    DUE,
    EARLIEST,
    END_OF_POUR,
    LATEST,
    OWN_START,
    Beside,
    Prompt,
    Stage,
)

TINTED, CLEAN_CUP, ANOTHER_COAT = "tinted", "clean_cup", "another_coat"

HARDENER = (
    "Hardener burns skin and eyes and can make you allergic for life. Gloves, goggles, sleeves. "
    "Wash skin with soap and water, never with solvent. The maker's sheet decides."
)
GETTING_WARM = "A cup that gets warm can smoke: pour it out thin at once."
HEAT_CHECKS = ("cup_warm_while_poured", "cup_gels_early", "pour_ends_late")
PUDDLE = (
    "As deep as the film, in a ring of tape, on printed black and white stripes. "
    "A thin smear proves nothing about a film ten times as deep."
)
MIST = (
    "Alcohol mist burns. No flame, spark, heater or hot tool near it, and fresh air moving. "
    "The maker's sheet decides."
)
NO_TIME = "The resin card gives no time for this, so there is no clock. Follow the maker's sheet."

B_ALONE = (
    Beside(("reading_b", "part_b_volume"), "of B"),
    Beside(("reading_b_mass", "part_b_mass"), "on a scale"),
)

STAGES = (
    Stage(
        "make_ready",
        "Make ready",
        "Tap each line when it is so.",
        "Begin the cup",
        (HARDENER,),
        lines=READY_LINES,
    ),
    Stage(
        "part_a",
        "Part A",
        "Pour in part A. Read it at eye level.",
        "A is in",
        figures=("reading_a", "part_a_volume", "reading_a_mass", "part_a_mass"),
        figure_before="A up to",
        beside=(Beside(("reading_a_mass", "part_a_mass"), "on a scale"),),
        fills_with="a",
    ),
    Stage(
        "part_b",
        "Part B",
        "Tap as B touches A. Then fill to the mark.",
        "A has touched B",
        (HARDENER,),
        heat_checks=HEAT_CHECKS,
        figures=("reading_total", "cup_volume"),
        figure_before="then B up to",
        beside=B_ALONE,
        fills_with="b",
    ),
    Stage(
        "fill",
        "Part B",
        "Fill up with part B. Read it at eye level.",
        "B is in, start mixing",
        (HARDENER,),
        heat_checks=HEAT_CHECKS,
        figures=("reading_total", "cup_volume"),
        figure_before="B up to",
        beside=B_ALONE,
        fills_with="b",
    ),
    Stage(
        "mix",
        "Mix",
        "Mix. Stir slowly.",
        "Mixed, go on",
        quiet=(GETTING_WARM,),
        heat_checks=HEAT_CHECKS,
        counts_from=OWN_START,
        duration=("mix_time",),
        bound=EARLIEST,
        clock="Mixed",
        late="Mix time was over at",
        past="Mixed. Scrape once more, then go on.",
        without=(
            "The resin card gives no mix time, so this clock counts up. "
            "Mix as long as the maker's sheet says."
        ),
        rings=True,
        prompts=(
            Prompt(0.0, "Mix. Stir slowly.", ""),
            Prompt(0.25, "Mix. Scrape the sides.", "sides"),
            Prompt(0.5, "Mix. Scrape the bottom.", "bottom"),
            Prompt(0.75, "Mix. Scrape the sides and the bottom again.", "both again"),
        ),
    ),
    Stage(
        "tint",
        "Tint and stir",
        "Hide test: a puddle as deep as the film. Does it hide?",
        "It hides, go on",
        ("Past the limit the film may stay soft.",),
        quiet=(PUDDLE, GETTING_WARM),
        heat_checks=HEAT_CHECKS,
        figures=("starting_drops",),
        without="The resin card gives no tint limit. Count the drops and follow the maker's sheet.",
        only=TINTED,
    ),
    Stage(
        "clean_cup",
        "Clean cup",
        "Pour it into a clean cup and stir again.",
        "Stirred, go on",
        ("Leave what sticks to the first cup: it may be unmixed.",),
        quiet=(GETTING_WARM,),
        heat_checks=HEAT_CHECKS,
        only=CLEAN_CUP,
    ),
    Stage(
        "pour",
        "Pour and spread",
        "Pour, wet out, spread evenly. Tap when the pour ends.",
        "Poured",
        quiet=(GETTING_WARM,),
        heat_checks=HEAT_CHECKS,
        counts_from=CONTACT,
        duration=("pour_by", "usable_time"),
        bound=LATEST,
        clock="Pour by",
        late="Pour-by was",
        past=(
            "Do not pour a cup that is warm or thickening: it will not level. Set it outdoors on a fireproof "
            "surface, away from people, and do not seal it."
        ),
        without="The resin card gives no pot life, so there is no pour-by. Pour at once.",
        rings=True,
        warning=120.0,
    ),
    Stage(
        "first_mist",
        "First mist",
        "Mist the film with alcohol from well above: bubbles open.",
        "Misted",
        (MIST,),
        counts_from=END_OF_POUR,
        duration=("first_mist",),
        bound=DUE,
        clock="First mist",
        late="First mist was due at",
        past="Mist now, if the film is still wet.",
        without=NO_TIME,
        rings=True,
    ),
    Stage(
        "second_mist",
        "Second mist",
        "Mist the film again, lightly.",
        "Misted again",
        (MIST,),
        counts_from=END_OF_POUR,
        duration=("second_mist",),
        bound=DUE,
        clock="Second mist",
        late="Second mist was due at",
        past="Mist now, if the film is still wet.",
        without=NO_TIME,
        rings=True,
    ),
    Stage(
        "cover",
        "Cover",
        "Cover the face from dust. Nothing may touch the film.",
        "Covered",
    ),
    Stage(
        "tack_free",
        "Tack-free",
        "Keep hands and dust off until it is tack-free.",
        "It is tack-free",
        counts_from=END_OF_POUR,
        duration=("tack_free_time",),
        bound=EARLIEST,
        clock="Tack-free",
        late="Tack-free was due at",
        past="Try a corner first, with a glove on.",
        without=NO_TIME,
        rings=True,
    ),
    Stage(
        "recoat_opens",
        "Recoat window",
        "Wait until the next coat may go on.",
        "The window is open",
        counts_from=END_OF_POUR,
        duration=("recoat_opens",),
        bound=EARLIEST,
        clock="Recoat opens",
        late="Recoat opened at",
        past="The next coat may go on.",
        without=NO_TIME,
        rings=True,
        only=ANOTHER_COAT,
    ),
    Stage(
        "recoat_closes",
        "Recoat window",
        "Pour the next coat before the window closes.",
        "Next coat is on",
        counts_from=CONTACT,
        duration=("recoat_closes",),
        bound=LATEST,
        clock="Recoat closes",
        late="Recoat closed at",
        past="Sand the film before another coat, as the maker's sheet says.",
        without=NO_TIME,
        rings=True,
        warning=1800.0,
        only=ANOTHER_COAT,
    ),
    Stage(
        "cured",
        "Cure",
        "Do not load, trim or ship it before it is cured.",
        "It is cured",
        counts_from=END_OF_POUR,
        duration=("cure_time",),
        bound=EARLIEST,
        clock="Cured",
        late="Cure was due at",
        past="Cured by the card. Press a corner before you load or ship it.",
        without=NO_TIME,
        rings=True,
    ),
    Stage(
        "top_coat",
        "Top coat",
        "Top coat against sunlight when its wait is over.",
        "Top coat is on",
        ("Sand with dust extraction and a respirator.",),
        counts_from=END_OF_POUR,
        duration=("top_coat_wait",),
        bound=EARLIEST,
        clock="Top coat",
        late="Top coat was due at",
        past="The top coat may go on.",
        without=NO_TIME,
        rings=True,
    ),
)
