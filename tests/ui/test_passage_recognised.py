"""A clip without a passage is recognised while the import table is open."""

from pathlib import Path

import numpy as np
import soundfile

TAKES = Path(__file__).parents[2] / "sample_audio" / "takes"


def show(window, settle, path):
    window.main.practice.import_files([path])
    settle(window)
    (entry,) = window.main.practice.forms.imports.rows
    return entry


def clip(tmp_path, change) -> Path:
    samples, rate = soundfile.read(TAKES / "viola-study-last-day.flac")
    path = tmp_path / "clip.wav"
    soundfile.write(path, change(samples), rate)
    return path


def test_a_clip_of_a_known_passage_is_filed_there_unless_the_player_says_otherwise(
    open_window, real_bench, settle, tmp_path
):
    (passage,) = real_bench.passages.list()
    window = open_window(real_bench)
    window.main.practice.panel.passage.choose("")
    entry = show(window, settle, clip(tmp_path, lambda samples: 0.5 * samples))
    assert entry.passage.key == passage.id
    assert passage.name in entry.source.text()
    assert entry.proposal.passage_id == passage.id


def test_what_the_player_chose_in_the_table_stays(open_window, real_bench, settle, tmp_path):
    window = open_window(real_bench)
    path = clip(tmp_path, lambda samples: 0.5 * samples)
    window.main.practice.import_files([path])
    imports = window.main.practice.forms.imports
    while not imports.rows:
        assert window.jobs.wait_until_idle(0.02) in {True, False}
    (entry,) = imports.rows
    entry.passage.picked.emit("")
    entry.passage.choose("")
    settle(window)
    assert entry.proposal.passage_id is None


def test_noise_is_no_passage(open_window, real_bench, settle, tmp_path):
    window = open_window(real_bench)
    window.main.practice.panel.passage.choose("")
    noise = np.random.default_rng(3)
    entry = show(
        window, settle, clip(tmp_path, lambda samples: 0.1 * noise.normal(size=samples.shape))
    )
    assert entry.passage.key == ""
    assert entry.proposal.passage_id is None
