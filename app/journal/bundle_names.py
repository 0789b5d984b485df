"""The names by which bundles, replies and what lies in them are known again."""

from pathlib import Path
from typing import Final

BUNDLE_SUFFIX: Final = ".pwbundle"
REPLY_SUFFIX: Final = ".pwreply"
MANIFEST_NAME: Final = "bundle.json"


def suffix_of(path: Path) -> str:
    """Tell a bundle and a reply by the end of the name; empty for anything else."""
    suffix = path.suffix.lower()
    return suffix if suffix in {BUNDLE_SUFFIX, REPLY_SUFFIX} else ""
