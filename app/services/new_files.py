"""Files that are handed out: whole or not there, and never over another."""

from pathlib import Path

from app.journal.failures import PlainFailure
from app.services.plain import plain_failures


def write_new(path: Path, content: bytes, not_done: str) -> Path:
    """Write a file that must not exist yet.

    Parameters
    ----------
    path : Path
    content : bytes
    not_done : str
        The end of a failure's sentence: ``"the report was not written"``.

    Raises
    ------
    PlainFailure
        Where the name is taken or the disk refuses; nothing is left then.
    """
    from audio.publishing import partial_name, publish, sync_file  # noqa: PLC0415

    partial = partial_name(path)
    with plain_failures(not_done):
        try:
            partial.write_bytes(content)
            sync_file(partial)
            publish(partial, path)
        except FileExistsError as error:
            raise name_taken(path) from error
        finally:
            partial.unlink(missing_ok=True)
    return path


def name_taken(path: Path) -> PlainFailure:
    """Say that there is a file of this name already; it stays as it is."""
    return PlainFailure(
        f"{path.name} exists already and is not overwritten.", "Choose another name."
    )
