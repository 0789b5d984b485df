"""The published test signals for loudness meters, each with its own tolerance.

EBU Tech 3341 table 1 (transcribed: read as a transcription whose targets agree with
libebur128's own tests) and EBU Tech 3342 V4 table 1 (read in full). Left out: 3341 cases
7, 8 and 3342 cases 5, 6 need programme files; 11 and 14 are the live forms of 10 and 13.
"""

import math
from typing import Final

import numpy as np

from analysis.loudness import (
    SURROUND_WEIGHTS,
    LoudnessCurve,
    measure_loudness,
)
from analysis.results import FloatArray
from analysis.true_peak import measure_true_peak_dbtp
from app.services.accuracy.table import Piece, Row, Section, Tally

_RATE_HZ: Final = 48_000
_TONE_HZ: Final = 1000.0
_SHIFTS: Final = 20

Parts = tuple[tuple[float, float | None], ...]
"""Seconds and peak level in dBFS (None: silence), one after the other."""

_LOUD_MIDDLE: Final[Parts] = ((10.0, -36.0), (60.0, -23.0), (10.0, -36.0))
_INTEGRATED: Final[dict[str, Parts]] = {
    "3341 #1": ((20.0, -23.0),),
    "3341 #2": ((20.0, -33.0),),
    "3341 #3": _LOUD_MIDDLE,
    "3341 #4": ((10.0, -72.0), *_LOUD_MIDDLE, (10.0, -72.0)),
    "3341 #5": ((20.0, -26.0), (20.1, -20.0), (20.0, -26.0)),
}
_SURROUND_DBFS: Final = (-28.0, -28.0, -24.0, -30.0, -30.0)
_SLIDING: Final[dict[str, tuple[str, Parts]]] = {
    "3341 #9": ("S", ((1.34, -20.0), (1.66, -30.0)) * 5),
    "3341 #12": ("M", ((0.18, -20.0), (0.22, -30.0)) * 25),
}
_SHIFTED: Final = {"3341 #10": ("S", 0.15, 3.0), "3341 #13": ("M", 0.02, 0.4)}
# amplitude, sample rate over frequency, phase in degrees, dBTP
_TONES: Final = {
    "3341 #15": (0.50, 4, 0.0, -6.0),
    "3341 #16": (0.50, 4, 45.0, -6.0),
    "3341 #17": (0.50, 6, 60.0, -6.0),
    "3341 #18": (0.50, 8, 67.5, -6.0),
    "3341 #19": (1.41, 4, 45.0, 3.0),
}
_LOUD_PERIOD: Final = ("3341 #20", "3341 #21", "3341 #22", "3341 #23")
_RANGES: Final = {
    "3342 #1": ((-20.0, -30.0), 10.0),
    "3342 #2": ((-20.0, -15.0), 5.0),
    "3342 #3": ((-40.0, -20.0), 20.0),
    "3342 #4": ((-50.0, -35.0, -20.0, -35.0, -50.0), 15.0),
}


def measure_case(piece: Piece) -> Tally:
    """Make one case's signal and read the meters it is about."""
    case = piece[0]
    if case in _INTEGRATED:
        curve = _stereo(_INTEGRATED[case])
        readings = {"I": [curve.integrated_lufs]}
        if case in ("3341 #1", "3341 #2"):
            readings |= {
                "M": [float(curve.momentary_lufs.max())],
                "S": [float(curve.short_term_lufs.max())],
            }
    elif case == "3341 #6":
        channels = [_tone(((20.0, level),)) for level in _SURROUND_DBFS]
        curve = measure_loudness(np.column_stack(channels), _RATE_HZ, weights=SURROUND_WEIGHTS)
        readings = {"I": [curve.integrated_lufs]}
    elif case in _SLIDING:
        readings = _sliding(*_SLIDING[case])
    elif case in _SHIFTED:
        readings = _shifted(*_SHIFTED[case])
    elif case in _TONES:
        readings = {"true peak": [_peak_of_tone(*_TONES[case][:3])]}
    elif case in _LOUD_PERIOD:
        readings = {"true peak": [_peak_of_loud_period(_LOUD_PERIOD.index(case))]}
    else:
        curve = _stereo(tuple((20.0, level) for level in _RANGES[case][0]))
        readings = {"LRA": [curve.range_lu]}
    return {
        f"{case} {quantity}": [value for value in values if value is not None]
        for quantity, values in readings.items()
    }


def _tone(parts: Parts) -> FloatArray:
    gain = np.concatenate(
        [
            np.full(round(seconds * _RATE_HZ), 0.0 if level is None else 10.0 ** (level / 20.0))
            for seconds, level in parts
        ]
    )
    return np.asarray(gain * np.sin(2.0 * np.pi * _TONE_HZ * np.arange(gain.size) / _RATE_HZ))


def _stereo(parts: Parts) -> LoudnessCurve:
    channel = _tone(parts)
    return measure_loudness(np.column_stack((channel, channel)), _RATE_HZ)


def _meter(curve: LoudnessCurve, quantity: str) -> FloatArray:
    return curve.short_term_lufs if quantity == "S" else curve.momentary_lufs


def _sliding(quantity: str, parts: Parts) -> dict[str, list[float | None]]:
    """Read a meter that must stand still once it has filled (M: after 1 s)."""
    values = _meter(_stereo(parts), quantity)
    if quantity == "M":
        values = values[60:]
    return {quantity: [float(values.min()), float(values.max())]}


def _shifted(quantity: str, step_s: float, length_s: float) -> dict[str, list[float | None]]:
    return {
        f"max {quantity}": [
            float(
                _meter(
                    _stereo(((k * step_s, None), (length_s, -23.0), (1.0, None))), quantity
                ).max()
            )
            for k in range(_SHIFTS)
        ]
    }


def _faded(samples: FloatArray, fade: int) -> FloatArray:
    # The published files begin and end softly: an abrupt start rings on its own.
    index = np.arange(samples.size)
    return np.asarray(samples * np.minimum(1.0, np.minimum(index, index[::-1]) / fade))


def _peak_of_tone(amplitude: float, divisor: int, phase_degrees: float) -> float:
    phase = 2.0 * np.pi * np.arange(_RATE_HZ // 4) / divisor + math.radians(phase_degrees)
    return measure_true_peak_dbtp(_faded(amplitude * np.sin(phase), _RATE_HZ // 50), _RATE_HZ)


def _peak_of_loud_period(offset: int) -> float:
    """One loud period in a quiet tone, made at four times the rate and thinned out.

    The low-pass before thinning is ours; the transcription names none.
    """
    dense_rate = 4 * _RATE_HZ
    quiet = 0.5 * np.sin(2.0 * np.pi * (_RATE_HZ / 6) * np.arange(dense_rate // 10) / dense_rate)
    loud = np.sin(2.0 * np.pi * (_RATE_HZ / 4) * np.arange(16) / dense_rate)
    middle = (quiet.size // 2) // 24 * 24
    dense = np.concatenate((quiet[:middle], loud, quiet[middle:]))
    reach = np.arange(-128, 129)
    taps = 0.95 / 4.0 * np.sinc(0.95 / 4.0 * reach) * np.hamming(reach.size)
    filtered = np.convolve(dense, taps / taps.sum(), mode="same")
    return measure_true_peak_dbtp(_faded(filtered, 960)[offset::4], _RATE_HZ)


def _targets() -> dict[str, tuple[str, float, float, float]]:
    """Give unit, target, and how far below and above it a reading may lie, by case."""
    found: dict[str, tuple[str, float, float, float]] = {}
    for case in _INTEGRATED:
        target = -33.0 if case == "3341 #2" else -23.0
        found[f"{case} I"] = ("LUFS", target, 0.1, 0.1)
        if case in ("3341 #1", "3341 #2"):
            found[f"{case} M"] = found[f"{case} S"] = ("LUFS", target, 0.1, 0.1)
    found["3341 #6 I"] = ("LUFS", -23.0, 0.1, 0.1)
    for case, (quantity, _parts) in _SLIDING.items():
        found[f"{case} {quantity}"] = ("LUFS", -23.0, 0.1, 0.1)
    for case, (quantity, _step, _length) in _SHIFTED.items():
        found[f"{case} max {quantity}"] = ("LUFS", -23.0, 0.1, 0.1)
    for case, (*_tone_of, target) in _TONES.items():
        found[f"{case} true peak"] = ("dBTP", target, 0.4, 0.2)
    for case in _LOUD_PERIOD:
        found[f"{case} true peak"] = ("dBTP", 0.0, 0.4, 0.2)
    for case, (_levels, target) in _RANGES.items():
        found[f"{case} LRA"] = ("LU", target, 1.0, 1.0)
    return found


def _rows(tally: Tally) -> tuple[Row, ...]:
    """Give a line a case and quantity; of several readings the one farthest off."""
    rows = []
    for name, (unit, target, below, above) in sorted(
        _targets().items(), key=lambda item: _order(item[0])
    ):
        values = tally.get(name, [])
        worst = max(values, key=lambda value, target=target: abs(value - target), default=None)  # type: ignore[misc]
        rows.append(
            Row(
                f"Tech {name}", unit, "EBU test signal", worst,
                target - below, target + above, len(values), 2,
                "" if values else "The meter gave no reading.",
            )
        )  # fmt: skip
    return tuple(rows)


def _order(name: str) -> tuple[int, int, str]:
    standard, case, quantity = name.split(" ", 2)
    return int(standard), int(case.lstrip("#")), quantity


def section() -> Section:
    """Give the section: one piece a case."""
    cases = dict.fromkeys(name.rsplit("#", 1)[0] + "#" + name.rsplit("#", 1)[1].split(" ")[0]
                          for name in _targets())  # fmt: skip
    return Section("Dynamics", tuple((case, 0) for case in cases), measure_case, _rows)
