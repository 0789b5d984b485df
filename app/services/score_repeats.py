"""The order in which the bars of a part are played: repeats, endings, D.C. and D.S."""

import copy
from typing import Any, Final

_MOST_BARS: Final = 10_000
_BONE_QUARTERS: Final = 4.0


def playing_order(part: Any, measures: list[Any]) -> tuple[list[int], bool]:
    """Unfold the repeats of a part.

    A skeleton of empty bars that carry the signs alone is unfolded, so that nothing of
    the music is copied and the numbers of the bars do not matter.

    Parameters
    ----------
    part : music21 Part
    measures : list of music21 Measure
        Its measures, as printed.

    Returns
    -------
    (order, straight) : list of int, bool
        Indices into `measures` in playing order; whether there are signs that could not
        be unfolded, so that the order is the printed one.
    """
    as_printed = list(range(len(measures)))
    from music21 import repeat, stream  # noqa: PLC0415 - slow

    skeleton = stream.Part()
    bones: list[Any] = []
    has_signs = False
    for index, measure in enumerate(measures):
        bone, signed = _bone(measure, index)
        has_signs = has_signs or signed
        bones.append(bone)
        skeleton.append(bone)
    if not has_signs:
        return as_printed, False
    _copy_endings(part, measures, bones, skeleton)
    try:
        expander = repeat.Expander(skeleton)
        if not expander.isExpandable():
            return as_printed, True
        played = expander.process().getElementsByClass("Measure")
        order = [_index_of(bone) for bone in played]
    except Exception:
        return as_printed, True
    if not order or len(order) > _MOST_BARS or not all(0 <= k < len(measures) for k in order):
        return as_printed, True
    return order, False


def _bone(measure: Any, index: int) -> tuple[Any, bool]:
    from music21 import note, stream  # noqa: PLC0415 - slow

    bone = stream.Measure(number=index + 1)
    # Unfolding gives the bars new numbers; what is sung stays with them.
    silence = note.Rest(quarterLength=_BONE_QUARTERS)
    silence.lyric = str(index)
    bone.append(silence)
    signed = False
    for side in ("leftBarline", "rightBarline"):
        line = getattr(measure, side)
        if line is not None and "Repeat" in line.classes:
            setattr(bone, side, copy.deepcopy(line))
            signed = True
    for sign in measure.recurse().getElementsByClass("RepeatMark"):
        if "Barline" in sign.classes:
            continue
        # A sign at the end of a bar is one for the whole bar.
        late = float(sign.getOffsetInHierarchy(measure)) > 0.0
        bone.insert(_BONE_QUARTERS if late else 0.0, copy.deepcopy(sign))
        signed = True
    return bone, signed


def _index_of(bone: Any) -> int:
    return int(next(iter(bone.getElementsByClass("Rest"))).lyric)


def _copy_endings(part: Any, measures: list[Any], bones: list[Any], skeleton: Any) -> None:
    from music21 import spanner  # noqa: PLC0415 - slow

    places = {id(measure): index for index, measure in enumerate(measures)}
    for ending in part.recurse().getElementsByClass("RepeatBracket"):
        found = [places[id(m)] for m in ending.getSpannedElements() if id(m) in places]
        if found:
            inside = bones[min(found) : max(found) + 1]
            skeleton.insert(0, spanner.RepeatBracket(inside, number=ending.number))
