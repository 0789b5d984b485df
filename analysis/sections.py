"""Filtering through second-order sections, a sample after the other, in compiled code.

Apart from :mod:`analysis.filters`, which is loaded where nothing compiled is wanted yet.
"""

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled

FloatArray = NDArray[np.float64]


@compiled
def in_sections(sections: FloatArray, samples: FloatArray, state: FloatArray) -> FloatArray:
    """Filter through second-order sections, transposed direct form II.

    Parameters
    ----------
    sections : (s, 6) array
        b0 b1 b2 a0 a1 a2 of each, a0 being 1.
    samples : (n,) array
    state : (s, 2) array
        What the filter still holds of samples before; changed to what it holds afterwards.

    Returns
    -------
    (n,) array
    """
    filtered = np.empty(samples.size)
    for place in range(samples.size):
        value = samples[place]
        for number in range(sections.shape[0]):
            new = sections[number, 0] * value + state[number, 0]
            state[number, 0] = (
                sections[number, 1] * value - sections[number, 4] * new + state[number, 1]
            )
            state[number, 1] = sections[number, 2] * value - sections[number, 5] * new
            value = new
        filtered[place] = value
    return filtered
