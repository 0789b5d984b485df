"""What each key of the Compare page does."""

from typing import TYPE_CHECKING

from app.journal.blind_ear import Choice as Answer

if TYPE_CHECKING:
    from app.ui.pages.compare import ComparePage


def bind_keys(page: "ComparePage") -> None:
    """Bind the actions of the page; its sections bind their own."""
    transport, playback, blind = page.transport, page.playback, page.blind
    pictures = page.pictures
    for action, slot in (
        ("play", page.play),
        ("switch", page.switch),
        ("earlier", lambda: page.step(-1)),
        ("later", lambda: page.step(1)),
        ("then_now", page.play_then_and_now),
        ("back", lambda: transport.step(-1)),
        ("forward", lambda: transport.step(1)),
        ("start", lambda: playback.seek(0.0)),
        ("select_from", lambda: playback.select_edge(0)),
        ("select_to", lambda: playback.select_edge(1)),
        ("loop", playback.toggle_loop),
        ("slower", lambda: transport.change_speed(-1)),
        ("faster", lambda: transport.change_speed(1)),
        ("swap", page.swap),
        ("layout", page.layout_button.click),
        ("picture", pictures.next_picture),
        ("large_picture", pictures.large.click),
        ("trend", pictures.trend.next_measure),
        ("save_picture", pictures.ask_and_save),
        ("blind", page.toggle_blind),
        ("blind_first", lambda: blind.hear(second=False)),
        ("blind_second", lambda: blind.hear(second=True)),
        ("blind_answer_first", lambda: blind.answer(Answer.FIRST)),
        ("blind_answer_second", lambda: blind.answer(Answer.SECOND)),
        ("blind_answer_none", lambda: blind.answer(Answer.NO_DIFFERENCE)),
    ):
        page.desk.keys.bind(page, f"compare.{action}", slot)
