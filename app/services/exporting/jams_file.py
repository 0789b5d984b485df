"""Notes, pitch, beats and markers of a take as JAMS, a JSON format of music research.

Source of the format: E. J. Humphrey and others, "JAMS: A JSON Annotated Music
Specification for Reproducible MIR Research" (ISMIR 2014), and the schema of version
0.3. Standard namespaces carry what they can; what they cannot (uncertainty, weight,
state) stands in the annotation's sandbox, one entry for each observation.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker, Take
from app.services.plain_json import Json

_JAMS_VERSION = "0.3.4"


def jams_object(
    take: Take, title: str, measured: Mapping[str, Any], markers: Sequence[Marker]
) -> Json:
    """Describe a take.

    Parameters
    ----------
    take : Take
    title : str
        The passage, for people.
    measured : mapping
        The machine-readable object of the take with its curves; empty where it is not
        measured: the file then holds the markers alone.
    markers : sequence of Marker

    Returns
    -------
    dict
        A JAMS file, JSON-compatible.
    """
    annotations = [_markers(take, markers)]
    if measured:
        tool = str(measured["algorithm"])
        annotations += [
            _notes(take, tool, measured["notes"]),
            _contour(take, tool, measured["pitch"]),
            _beats(take, tool, measured["tempo"]),
        ]
    return {
        "file_metadata": {
            "title": title,
            "artist": "",
            "release": "",
            "duration": take.duration_s,
            "identifiers": {"sha256": take.sha256, "file": take.file},
            "jams_version": _JAMS_VERSION,
        },
        "annotations": annotations,
        "sandbox": {
            "take_id": take.id,
            "practice_day": take.practice_day.isoformat(),
            "recorded_at": take.recorded_at.isoformat(),
        },
    }


def markers_of(found: Mapping[str, Any]) -> tuple[Json, ...]:
    """Read the markers back from a JAMS object that :func:`jams_object` made.

    Returns
    -------
    tuple of dict
        ``start_s``, ``end_s``, ``category``, ``text``, ``weight``, ``author``, ``state``.
    """
    markers: list[Json] = []
    for annotation in found["annotations"]:
        if annotation["namespace"] != "tag_open":
            continue
        more = annotation["sandbox"]["markers"]
        for observed, kept in zip(annotation["data"], more, strict=True):
            end_s = observed["time"] + observed["duration"] if observed["duration"] else None
            markers.append(
                {
                    "start_s": observed["time"],
                    "end_s": end_s,
                    "category": kept["category"],
                    "text": kept["text"],
                    "weight": kept["weight"],
                    "author": Author(kept["author"]),
                    "state": MarkerState(kept["state"]),
                }
            )
    return tuple(markers)


def _markers(take: Take, markers: Sequence[Marker]) -> Json:
    data = [
        _observation(
            marker.start_s,
            0.0 if marker.end_s is None else marker.end_s - marker.start_s,
            f"{marker.category}: {marker.text}" if marker.text else marker.category,
        )
        for marker in markers
    ]
    sandbox: Json = {
        "markers": [
            {
                "category": marker.category,
                "text": marker.text,
                "weight": marker.weight,
                "author": str(marker.author),
                "state": str(marker.state),
            }
            for marker in markers
        ]
    }
    return _annotation(take, "tag_open", data, sandbox, source="the player's and teacher's ears")


def _notes(take: Take, tool: str, notes: Sequence[Mapping[str, Any]]) -> Json:
    sounding = [note for note in notes if note["pitch_hz"] is not None]
    data = [
        _observation(note["start_s"], note["end_s"] - note["start_s"], note["pitch_hz"])
        for note in sounding
    ]
    kept = ("name", "deviation_cents", "uncertainty_cents", "vibrato", "kind", "reason")
    sandbox: Json = {
        "notes": [{key: note[key] for key in kept} for note in sounding],
        # Left out of the data because they have no pitch that could be measured.
        "not_measurable": [
            {key: note[key] for key in ("start_s", "end_s", "kind", "reason")}
            for note in notes
            if note["pitch_hz"] is None
        ],
    }
    return _annotation(take, "note_hz", data, sandbox, tool=tool)


def _contour(take: Take, tool: str, pitch: Mapping[str, Any]) -> Json:
    frames = [
        (time_s, f0_hz, confidence)
        for time_s, f0_hz, confidence in zip(
            pitch.get("time_s", ()),
            pitch.get("f0_hz", ()),
            pitch.get("confidence", ()),
            strict=True,
        )
        if time_s is not None
    ]
    data = {
        "time": [time_s for time_s, _, _ in frames],
        "duration": [0.0] * len(frames),
        "value": [
            {"index": 0, "frequency": f0_hz or 0.0, "voiced": f0_hz is not None}
            for _, f0_hz, _ in frames
        ],
        "confidence": [confidence for _, _, confidence in frames],
    }
    return _annotation(take, "pitch_contour", data, _why_not(pitch), tool=tool)


def _beats(take: Take, tool: str, tempo: Mapping[str, Any]) -> Json:
    data = [_observation(beat_s, 0.0, None) for beat_s in tempo.get("beat_s") or ()]
    return _annotation(take, "beat", data, _why_not(tempo), tool=tool)


def _why_not(state: Mapping[str, Any]) -> Json:
    return {"status": state["status"], "reason": state["reason"]}


def _observation(time_s: float, duration_s: float, value: object) -> Json:
    return {"time": time_s, "duration": max(0.0, duration_s), "value": value, "confidence": None}


def _annotation(
    take: Take,
    namespace: str,
    data: object,
    sandbox: Json,
    *,
    tool: str = "",
    source: str = "measured",
) -> Json:
    return {
        "namespace": namespace,
        "annotation_metadata": {
            "corpus": "",
            "version": "1",
            "annotation_tools": f"Passagework {tool}".strip(),
            "annotation_rules": "",
            "validation": "",
            "data_source": source,
        },
        "data": data,
        "sandbox": sandbox,
        "time": 0.0,
        "duration": take.duration_s,
    }
