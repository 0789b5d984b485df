"""Which key does what on the Listen page."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from app.ui.keys import MARKER_KEY_COUNT

if TYPE_CHECKING:
    from app.ui.pages.listen import ListenPage

NOTES, MARKERS, NUMBERS, TAKE, SUGGESTIONS = range(5)


def bind_listen_keys(page: "ListenPage") -> None:
    """Let the keys of the Listen page do what they say."""
    bind, transport, lanes = page.desk.keys.bind, page.transport, page.lanes
    playback, marking = page.playback, page.marking
    layout = lanes.layout_of_lanes
    slots: dict[str, Callable[[], object]] = {
        "play": transport.toggle,
        "back": partial(transport.step, -1),
        "forward": partial(transport.step, 1),
        "back_note": partial(playback.step_note, -1),
        "forward_note": partial(playback.step_note, 1),
        "start": transport.to_start,
        "select_from": partial(playback.select_edge, 0),
        "select_to": partial(playback.select_edge, 1),
        "loop": playback.toggle_loop,
        "slower": partial(transport.change_speed, -1),
        "faster": partial(transport.change_speed, 1),
        "normal_speed": partial(transport.change_speed, 0),
        "louder": partial(transport.change_volume, 1),
        "quieter": partial(transport.change_volume, -1),
        "along": page.along.toggle,
        "click": page.along.toggle_click,
        "drone": page.along.toggle_drone,
        "zoom_in": partial(lanes.zoom, 1),
        "zoom_out": partial(lanes.zoom, -1),
        "zoom_all": lanes.show_all,
        "zoom_selection": playback.zoom_to_selection,
        "pan_left": partial(lanes.pan, -1),
        "pan_right": partial(lanes.pan, 1),
        "lane_next": playback.choose_lane,
        "lane_taller": partial(playback.resize_lane, 1),
        "lane_lower": partial(playback.resize_lane, -1),
        "lane_hide": playback.hide_lane,
        "lanes_usual": layout.reset,
        "next_marker": partial(marking.step, 1),
        "previous_marker": partial(marking.step, -1),
        "edit_marker": marking.edit,
        "move_marker": marking.move,
        "weight": page.markers.editor.next_weight,
        "state": page.markers.editor.next_state,
        "filter": marking.toggle_filter,
        "delete_marker": page.markers.delete_chosen,
        "previous_take": partial(page.chooser.step, -1),
        "next_take": partial(page.chooser.step, 1),
        "notes": partial(page.side.show_pane, NOTES),
        "markers": partial(page.side.show_pane, MARKERS),
        "numbers": partial(page.side.show_pane, NUMBERS),
        "take": partial(page.side.show_pane, TAKE),
        "suggestions": partial(page.side.show_pane, SUGGESTIONS),
        "next_suggestion": partial(page.ear.step, 1),
        "previous_suggestion": partial(page.ear.step, -1),
        "accept": page.suggestions.accept,
        "accept_edit": partial(page.suggestions.accept, write=True),
        "dismiss": page.suggestions.dismiss,
        "all_suggestions": page.suggestions.toggle_all,
        "bring_back": page.ear.bring_back,
        "ear_first": page.ear.toggle,
        "show_measured": page.ear.show_measured,
        "heard_nothing": partial(page.ear.show_measured, heard_nothing=True),
        "picture": page.picture.toggle,
        "picture_larger": page.picture.toggle_larger,
        "compare": page.compare_with_first,
        "share": page.share_selection,
        "export": page.export_take,
        "delete_take": page.delete_take,
    }
    for action_id, slot in slots.items():
        bind(page, f"listen.{action_id}", slot)
    for number in range(1, MARKER_KEY_COUNT + 1):
        bind(page, f"listen.mark_{number}", partial(marking.mark, number))
