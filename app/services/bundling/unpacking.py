"""Take out of a bundle what belongs into a journal, and nothing else."""

import shutil
import stat
import struct
import zipfile
import zlib
from pathlib import Path, PurePosixPath

from app.journal.bundle_names import MANIFEST_NAME
from app.journal.bundles import (
    BundleManifest,
    belongs_into_a_journal,
    read_manifest,
)
from app.journal.failures import PlainFailure
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, stop_if

_LARGEST_JSON_BYTES = 64 * 2**20
_BLOCK_BYTES = 2**20
_KEEP_FREE_BYTES = 64 * 2**20
# What reading a member may raise: RuntimeError where it is locked with a password,
# struct.error where its header ends too early.
_UNREADABLE = (zipfile.BadZipFile, zlib.error, struct.error, RuntimeError, EOFError, OSError)


def manifest_of(bundle: Path) -> BundleManifest:
    """Read what a bundle is.

    Raises
    ------
    PlainFailure
        Where it is no bundle, damaged, or made by a newer version.
    """
    with _opened(bundle) as archive:
        return _manifest(archive)


def unpack(
    bundle: Path, folder: Path, progress: Progress, should_stop: ShouldStop
) -> BundleManifest:
    """Write the files of a bundle into an empty folder, as a journal has them.

    Names that lead elsewhere, links and files a journal has no place for are passed
    over. A file is never larger than the bundle says, and all of them together must
    fit on the disk before the first is written.

    Returns
    -------
    BundleManifest
        What the bundle says it is.

    Raises
    ------
    PlainFailure
        Where the bundle is damaged or does not fit.
    Stopped
        Once `should_stop` says so; what was written so far is the caller's to remove.
    """
    with plain_failures("the bundle was not opened"), _opened(bundle) as archive:
        manifest = _manifest(archive)  # a bundle at all, and not from a newer version
        files = [info for info in archive.infolist() if _is_wanted(info)]
        total = sum(info.file_size for info in files)
        if total + _KEEP_FREE_BYTES > shutil.disk_usage(_existing(folder)).free:
            raise PlainFailure(
                f"The bundle needs {total / 1e6:.0f} MB, and the disk has less.",
                "Make room on the disk, then open it again.",
            )
        done = 0
        for info in files:
            target = folder.joinpath(*PurePosixPath(info.filename).parts)
            target.parent.mkdir(parents=True, exist_ok=True)
            try:
                with archive.open(info) as source, target.open("xb") as out:
                    while block := source.read(_BLOCK_BYTES):
                        stop_if(should_stop)
                        out.write(block)
                        done += len(block)
                        progress(min(1.0, done / max(1, total)))
            except FileExistsError:
                continue  # a name that comes twice: the first one stays
            except (zipfile.BadZipFile, zlib.error, struct.error, RuntimeError, EOFError) as error:
                raise _damaged(bundle) from error
        text = _read(archive, archive.getinfo(MANIFEST_NAME))
        (folder / MANIFEST_NAME).write_bytes(text)
    return manifest


def _is_wanted(info: zipfile.ZipInfo) -> bool:
    is_link = stat.S_ISLNK(info.external_attr >> 16)
    is_huge = info.filename.endswith(".json") and info.file_size > _LARGEST_JSON_BYTES
    return not (info.is_dir() or is_link or is_huge) and belongs_into_a_journal(info.filename)


def _manifest(archive: zipfile.ZipFile) -> BundleManifest:
    try:
        info = archive.getinfo(MANIFEST_NAME)
    except KeyError as error:
        raise PlainFailure(
            f"{Path(archive.filename or '').name} is no bundle of Passagework.",
            "Choose a file that ends in .pwbundle.",
        ) from error
    if info.file_size > _LARGEST_JSON_BYTES:
        raise _damaged(Path(archive.filename or ""))
    return read_manifest(_read(archive, info))


def _read(archive: zipfile.ZipFile, info: zipfile.ZipInfo) -> bytes:
    try:
        return archive.read(info)
    except _UNREADABLE as error:
        raise _damaged(Path(archive.filename or "")) from error


def _opened(bundle: Path) -> zipfile.ZipFile:
    try:
        return zipfile.ZipFile(bundle)
    except FileNotFoundError as error:
        raise PlainFailure(f"{bundle} is not there.", "Check the name and the folder.") from error
    except (zipfile.BadZipFile, struct.error, NotImplementedError, OSError, ValueError) as error:
        raise _damaged(bundle) from error


def _damaged(bundle: Path) -> PlainFailure:
    return PlainFailure(
        f"{bundle.name} is no bundle of Passagework, or it is damaged.", "Ask for it once more."
    )


def _existing(folder: Path) -> Path:
    while not folder.exists():
        folder = folder.parent
    return folder
