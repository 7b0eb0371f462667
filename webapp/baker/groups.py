"""What the phone keeps for offline beside the core, in groups: each is taken whole or not at all.

The core is what one job needs from its sizes to its cover; no group ever holds it up. The worker's list, the
packs and the lines under Offline in the menu all follow from the table.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from webapp.baker.assets import static_imports
from webapp.errors import BakeError


@dataclass(frozen=True)
class Group:
    """A group: its name, what people call it, and its files and folders inside the versioned folder."""

    name: str
    says: str
    holds: tuple[str, ...]

    @property
    def pack(self) -> str:
        """The name of the one file that brings all of it."""
        return f"{self.name}.txt"

    def has(self, file: str) -> bool:
        """Whether a file of the versioned folder belongs to the group."""
        return any(file == each or (each.endswith("/") and file.startswith(each)) for each in self.holds)


GROUPS = (Group("working", "How it is worked out", ("working/", "workings.js")),)


def group_of(file: str, groups: Iterable[Group]) -> Group | None:
    """Return the group that a file of the versioned folder belongs to, or None for the core."""
    return next((group for group in groups if group.has(file)), None)


def check_groups(modules: Mapping[str, bytes], groups: Iterable[Group]) -> None:
    """Refuse a module that needs one of a group that may not be there, and a group without files."""
    groups = tuple(groups)
    for group in groups:
        if not any(group.has(module) for module in modules):
            raise BakeError(f"the group {group.name} holds none of the modules: {', '.join(group.holds)}")
    for module in modules:
        own = group_of(module, groups)
        for needed in static_imports(module, modules):
            other = group_of(needed, groups)
            if other not in (None, own):
                raise BakeError(
                    f"static/{module} imports {needed} as it loads, but that is of the group {other.name}, "
                    "which may not be there; import it later on, by import()"
                )
