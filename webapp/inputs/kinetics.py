"""What a person enters of a resin card for how fast its cure runs, where a laboratory has measured it."""

from webapp.inputs.entry import Input

CARD_KINETICS = (
    Input(
        "activation_energy",
        "Activation energy",
        "card",
        "molar energy",
        "How much faster the cure runs when warmer. Left blank: 57 kJ/mol, of a published 50 to 61.",
        "kJ/mol",
        "30 kJ/mol",
        "100 kJ/mol",
        "57 kJ/mol",
    ),
    Input(
        "self_start",
        "Self-start of the cure",
        "card",
        "ratio",
        "How far it runs without the help of what has already cured. Left blank: 0.1 (assumed).",
        "",
        "0.01",
        "1",
        "0.1",
    ),
)
