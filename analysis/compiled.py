"""A typed doorway to numba, so that compiled functions keep their signatures.

Compiled code is cached beside the module (or in numba's user cache where the
folder is read-only), so only the first run on a machine pays for compiling.
"""

from collections.abc import Callable
from typing import ParamSpec, TypeVar, cast

import numba

P = ParamSpec("P")
R = TypeVar("R")


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """Compile ``function`` to machine code when it is first called.

    Parameters
    ----------
    function : callable
        A function numba can compile in nopython mode.

    Returns
    -------
    callable
        The same function with the same signature, cached on disk.
    """
    return cast(Callable[P, R], numba.njit(cache=True, nogil=True)(function))


def compiled_for_sums(function: Callable[P, R]) -> Callable[P, R]:
    """Compile as :func:`compiled` does, and let sums be taken in another order.

    The processor then adds several products at a time. The last digits of a sum may differ
    between machines.
    """
    fast = numba.njit(cache=True, nogil=True, fastmath={"reassoc", "contract"})
    return cast(Callable[P, R], fast(function))
