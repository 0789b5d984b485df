"""Close a stream whose device may be gone, without waiting for it for ever.

A driver that lost its device can hang in the close call: PortAudio waits for a
thread of its own that never ends. Such a stream is left behind, its thread
with it; only a new start of the program is rid of it. As long as it hangs,
PortAudio must not be restarted (it would pull the rug from under that thread)
and must not be ended when the program ends (it would wait there again).
"""

import atexit
import contextlib
import logging
import sys
import threading
from typing import Any

log = logging.getLogger(__name__)

PATIENCE_S = 3.0
"""A sound server that is well closes a stream within a second, even on a busy machine."""

_lock = threading.Lock()
_hanging: set[threading.Thread] = set()


def close_stream(stream: Any) -> bool:
    """Close a stream.

    Parameters
    ----------
    stream : sounddevice stream
        The stream; it is not used afterwards.

    Returns
    -------
    bool
        Whether it is closed; False when it hangs and was left behind.
    """
    closer = threading.Thread(target=_close, args=(stream,), name="stream closer", daemon=True)
    closer.start()
    closer.join(PATIENCE_S)
    if not closer.is_alive():
        return True
    with _lock:
        _hanging.add(closer)
    log.warning("A sound device hangs while it is closed; its stream is left behind.")
    _let_the_program_end()
    return False


def is_hanging() -> bool:
    """Say whether a stream hangs that was left behind; it may still come round."""
    with _lock:
        _hanging.intersection_update([closer for closer in _hanging if closer.is_alive()])
        return bool(_hanging)


def _close(stream: Any) -> None:
    # A stream whose device is gone may refuse to close; there is nothing left to save in it.
    with contextlib.suppress(Exception):
        stream.close(ignore_errors=True)


def _let_the_program_end() -> None:
    """Take back the end of PortAudio that sounddevice has arranged for the program's end."""
    end = getattr(sys.modules.get("sounddevice"), "_exit_handler", None)
    if end is not None:
        atexit.unregister(end)
