"""Scores for tests of the window: real scales, and files that are read at once."""

from dataclasses import replace

from app.journal.failures import PlainFailure
from app.journal.scale_records import ScaleSpec
from app.journal.scales import checked, scale_score, start_octaves
from app.journal.scores import PassageScore, ScoreFile


class FakeScores:
    def __init__(self, state) -> None:
        self._s = state

    def start_octaves(self, spec, instrument):
        return start_octaves(checked(spec), 55, 100)

    def parts_of(self, path, progress, should_stop):
        if path.suffix != ".musicxml":
            raise PlainFailure(
                f"{path.name} is no score that can be read.", "Take a MusicXML file."
            )
        return tuple(
            replace(scale_score(ScaleSpec(tonic)), part=name)
            for tonic, name in (("D", "Violin"), ("C", "Cello"))
        )

    def attach(self, passage_id, path, part=0, bars=None):
        file = ScoreFile(f"scores/{path.name}", "ab" * 32, path.name, part, "", bars)
        return self._give(passage_id, PassageScore(file=file))

    def write_scale(self, passage_id, spec):
        return self._give(passage_id, PassageScore(scale=spec))

    def remove(self, passage_id):
        return self._give(passage_id, None)

    def set_parts(self, take_id, parts):
        self._s.rows[take_id] = replace(self._s.rows[take_id], parts=parts)

    def choose_bars(self, passage_id, bars):
        passage = next(p for p in self._s.passages if p.id == passage_id)
        return self._give(
            passage_id, replace(passage.score, file=replace(passage.score.file, bars=bars))
        )

    def _give(self, passage_id, score):
        self._s.passages = [
            replace(p, score=score) if p.id == passage_id else p for p in self._s.passages
        ]
        return next(p for p in self._s.passages if p.id == passage_id)
