"""The few kinds of error Sixteenth raises; each message names the thing, what was found and what to do."""


class FormulaError(ValueError):
    """A formula in the book is written against the book's rules."""


class PrintError(SyntaxError):
    """A formula uses something that the printer refuses; the message starts with file and line."""


class SheetError(LookupError):
    """The formulas cannot be wired into a sheet: a circle, a double, or a name that nobody provides."""


class QuantityError(ValueError):
    """What a person typed is no quantity of the kind asked for; the message stands beside the field."""


class JobFileError(ValueError):
    """A job file cannot be opened; the message says what is wrong with it and what to do."""


class BakeError(ValueError):
    """The static files do not fit together; the message names the file and what it asks for."""
