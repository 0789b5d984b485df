"""Clips: as long, as loud and as anonymous as they are said to be."""

from datetime import UTC, date, datetime
from pathlib import Path

import av
import numpy as np
import pyloudnorm
import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.journal.promises import PromiseRule, Stretch
from app.journal.records import PlayingSettings
from app.services.sharing.choice import ShareChoice, ShareForm
from app.services.sharing.frames import HEIGHT_PX, WIDTH_PX, LanePicture
from app.services.stopping import Stopped
from app.services.workbench import Workbench
from app.wiring import open_workbench
from audio.clip_film import told_by

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
TAKES = Path(__file__).parents[2] / "sample_audio" / "takes"
PLACE = "+48.2082+016.3738/"


def make_film(path: Path, seconds: float = 4.0) -> Path:
    """Write a phone-like film: a grey that grows with time, a tone, and private data."""
    with av.open(str(path), "w", format="mov") as container:
        container.metadata.update({"com.apple.quicktime.location.ISO6709": PLACE, "make": "Phone"})
        container.metadata["location"] = PLACE
        picture = container.add_stream("libx264", rate=25)
        picture.width, picture.height, picture.pix_fmt = 320, 180, "yuv420p"
        sound = container.add_stream("aac", rate=48_000, layout="mono")
        for number in range(round(seconds * 25)):
            grey = np.full((180, 320, 3), 40 + number, np.uint8)
            frame = av.VideoFrame.from_ndarray(grey, format="rgb24")
            frame.pts = number
            container.mux(picture.encode(frame))
        container.mux(picture.encode(None))
        t = np.arange(round(seconds * 48_000)) / 48_000
        tone = (0.05 * np.sin(2 * np.pi * 440 * t)).astype(np.float32)[np.newaxis]
        frame = av.AudioFrame.from_ndarray(tone, format="fltp", layout="mono")
        frame.sample_rate = 48_000
        container.mux(sound.encode(frame))
        container.mux(sound.encode(None))
    return path


@pytest.fixture
def bench(tmp_path):
    with open_workbench(tmp_path / "journal", clock=lambda: EVENING) as opened:
        yield opened


def bring(bench: Workbench, path: Path, day: int = 14) -> str:
    passages = bench.passages.list()
    passage = (
        passages[0]
        if passages
        else bench.passages.add("Study", "Opening $5", "1-8", PlayingSettings("viola"))
    )
    return bench.importing.file(bench.importing.propose([path], passage.id, date(2026, 3, day)))[
        0
    ].id


@pytest.fixture
def take_id(bench) -> str:
    found = bring(bench, TAKES / "viola-study-last-day.flac")
    bench.measuring.measure(found)
    return found


def sound_of(path: Path) -> tuple[np.ndarray, int]:
    with av.open(str(path)) as container:
        frames = [frame.to_ndarray() for frame in container.decode(audio=0)]
        rate = container.streams.audio[0].rate
    return np.concatenate(frames, axis=1).T, rate


def pictures_of(path: Path) -> list[np.ndarray]:
    with av.open(str(path)) as container:
        return [frame.to_ndarray(format="rgb24") for frame in container.decode(video=0)]


def test_a_clip_has_the_stated_loudness_and_length(bench, take_id, tmp_path):
    # Reference: pyloudnorm, an implementation of ITU-R BS.1770-4.
    clip = bench.sharing.make(ShareChoice(take_id, 1.0, 9.0, target_lufs=-18.0), tmp_path)
    samples, rate = sound_of(tmp_path / clip.file_name)
    assert len(samples) / rate == pytest.approx(8.0, abs=0.05)
    assert pyloudnorm.Meter(rate).integrated_loudness(samples) == pytest.approx(-18.0, abs=0.3)
    assert np.abs(samples[: rate // 100]).max() < 0.02 * np.abs(samples).max()


def test_a_loudness_that_would_overload_is_not_forced(bench, tmp_path):
    path = tmp_path / "sharp.wav"
    noise = np.random.default_rng(1).normal(0, 0.01, 96_000)
    noise[40_000] = 0.9
    soundfile.write(path, noise, 48_000, "PCM_24")
    choice = ShareChoice(bring(bench, path), 0.0, 2.0, target_lufs=-12.0, fade_s=0.0)
    assert "peaks stay at -1 dBTP" in bench.sharing.preview(choice).sound_sentence
    clip = bench.sharing.make(choice, tmp_path)
    assert np.abs(sound_of(tmp_path / clip.file_name)[0]).max() < 1.0


def test_the_title_card_stands_and_then_the_line_moves_with_the_music(bench, take_id, tmp_path):
    choice = ShareChoice(take_id, 2.0, 6.0, ShareForm.MEASURED, card_s=1.0, fade_s=0.1)
    clip = bench.sharing.make(choice, tmp_path)
    path = tmp_path / clip.file_name
    pictures = pictures_of(path)
    assert len(pictures) == 25 * 5
    assert pictures[0].shape == (HEIGHT_PX, WIDTH_PX, 3)
    assert np.abs(pictures[24].astype(int) - pictures[0]).mean() < 1.0
    samples, rate = sound_of(path)
    silent = samples[: int(0.95 * rate)]
    assert np.abs(silent).max() < 1e-3
    places = [line_place(pictures[25], pictures[n]) for n in (50, 75, 100)]
    # The clip is drawn over 89 % of 1280 pixels; 25 of its 100 pictures are a quarter.
    steps = np.diff([0.08 * WIDTH_PX, *places])
    assert steps == pytest.approx([0.89 * WIDTH_PX / 4] * 3, abs=4)


def line_place(first: np.ndarray, other: np.ndarray) -> float:
    """Find the column that is darker in the other picture."""
    column = first.astype(int).mean(axis=(0, 2)) - other.astype(int).mean(axis=(0, 2))
    return float(np.argmax(column))


def test_the_line_stays_inside_the_lanes():
    lanes = LanePicture(np.full((20, 100, 3), 255, np.uint8), 10.0, 90.0, 5, 15)
    for share, left in ((-1.0, 10), (0.0, 10), (0.5, 50), (1.0, 90), (7.0, 90)):
        dark = np.argwhere(lanes.at(share)[:, :, 0] < 255)
        assert dark[:, 0].min() == 5
        assert dark[:, 0].max() == 14
        assert abs(dark[:, 1].mean() - left) < 2
    assert lanes.picture.min() == 255


def test_a_film_is_trimmed_to_the_music_and_bears_its_title_for_a_while(bench, tmp_path):
    take_id = bring(bench, make_film(tmp_path / "IMG_1.mov", 7.0))
    clip = bench.sharing.make(ShareChoice(take_id, 1.0, 6.5, ShareForm.FILM, fade_s=0.0), tmp_path)
    pictures = pictures_of(tmp_path / clip.file_name)
    greys = [float(picture[:60].mean()) for picture in pictures]
    # Picture n of the film has the grey 40 + n; the clip begins with picture 25.
    expected = [40 + 25 + number for number in range(len(greys))]
    assert np.median(np.abs(np.array(greys) - expected)) < 3.0
    under_title, later = pictures[10][160:], pictures[-5][160:]
    assert under_title.std() > 10
    assert later.std() < 5


def test_nothing_private_comes_along_and_the_player_sees_what_stays_behind(bench, tmp_path):
    film = make_film(tmp_path / "IMG_1.mov")
    take_id = bring(bench, film)
    assert PLACE in " ".join(told_by(film).values())
    for form in ShareForm:
        if form is ShareForm.MEASURED:
            continue
        choice = ShareChoice(take_id, 0.5, 3.0, form)
        left_out = bench.sharing.preview(choice).left_out
        assert any(PLACE in line for line in left_out)
        path = tmp_path / f"clip-{form.value}{'.m4a' if form is ShareForm.SOUND else '.mp4'}"
        bench.sharing.make(choice, path)
        assert told_by(path) == {}
        assert PLACE.encode() not in path.read_bytes()
        assert b"Phone" not in path.read_bytes()


def test_several_days_bear_their_own_numbers_which_stay(bench, tmp_path):
    promise = bench.promises.make(
        "Forty days", PromiseRule(date(2026, 3, 10), Stretch.IN_TOTAL, 40)
    )
    takes = {day: bring(bench, tone(tmp_path, day), day) for day in (10, 12, 14)}
    promise_id = promise.promise.id
    choices = [
        ShareChoice(take_id, 0.0, 1.0, ShareForm.CARD, promise_id=promise_id)
        for take_id in takes.values()
    ]
    clips = bench.sharing.make_several(choices, tmp_path)
    assert [clip.practice_day.day for clip in clips] == [10, 12, 14]
    assert [clip.numbers for clip in clips] == [
        bench.promises.numbers_for(clip.practice_day)[0].text for clip in clips
    ]
    assert all(n.frozen for c in clips for n in bench.promises.numbers_for(c.practice_day))
    bring(bench, tone(tmp_path, 11), 11)  # a late clip changes the totals only
    assert bench.sharing.preview(choices[2]).title[0] == clips[2].numbers
    assert set(bench.sharing.shared()) == set(clips)


def tone(folder: Path, number: int) -> Path:
    path = folder / f"tone-{number}.wav"
    t = np.arange(96_000) / 48_000
    soundfile.write(path, 0.2 * np.sin(2 * np.pi * (300 + number) * t), 48_000, "PCM_24")
    return path


@pytest.mark.parametrize(
    "changes",
    [
        {"start_s": -1.0},
        {"start_s": 100.0},
        {"start_s": 1.0, "end_s": 1.1},
        {"end_s": 9.0, "longest_s": 5.0},
        {"target_lufs": 0.0},
        {"fade_s": -1.0},
        {"promise_id": "nothing"},
        {"form": ShareForm.FILM, "end_s": 3.0},
    ],
)
def test_what_makes_no_sense_is_refused_before_anything_is_written(
    bench, take_id, tmp_path, changes
):
    before = set(tmp_path.iterdir())
    with pytest.raises(PlainFailure):
        bench.sharing.make(ShareChoice(take_id, **changes), tmp_path)
    assert set(tmp_path.iterdir()) == before
    assert bench.sharing.shared() == ()


def test_stopping_leaves_nothing_and_nothing_is_written_over(bench, take_id, tmp_path):
    before = set(tmp_path.iterdir())
    asked = []

    def soon() -> bool:
        asked.append(1)
        return len(asked) > 5

    choice = ShareChoice(take_id, 0.0, 5.0, ShareForm.CARD)
    with pytest.raises(Stopped):
        bench.sharing.make(choice, tmp_path, should_stop=soon)
    assert set(tmp_path.iterdir()) == before
    bench.sharing.make(choice, tmp_path)
    with pytest.raises(PlainFailure, match="exists already"):
        bench.sharing.make(choice, tmp_path)
    with pytest.raises(PlainFailure, match=r"ends in \.mp4"):
        bench.sharing.make(choice, tmp_path / "clip.avi")
    assert len(bench.sharing.shared()) == 1
