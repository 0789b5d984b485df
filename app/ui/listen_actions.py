"""What can be done on the Listen page, and its keys: rows of the one table of actions."""

MARKER_KEY_COUNT = 9

LISTEN_ACTIONS: tuple[tuple[str, str, str], ...] = (
    ("listen.play", "Play, or pause", "Space"),
    ("listen.back", "Back 2 s", "Left"),
    ("listen.forward", "Forward 2 s", "Right"),
    ("listen.back_note", "To the note before", "Shift+Left"),
    ("listen.forward_note", "To the next note", "Shift+Right"),
    ("listen.start", "To the start", "Home"),
    ("listen.select_from", "Selection starts here", "["),
    ("listen.select_to", "Selection ends here", "]"),
    ("listen.loop", "Loop the selection, or stop looping", "O"),
    ("listen.slower", "Slower", "-"),
    ("listen.faster", "Faster", "="),
    ("listen.normal_speed", "Speed as played", "0"),
    ("listen.louder", "Louder", "Ctrl+Up"),
    ("listen.quieter", "Quieter", "Ctrl+Down"),
    ("listen.zoom_in", "Zoom in", "Ctrl+="),
    ("listen.zoom_out", "Zoom out", "Ctrl+-"),
    ("listen.zoom_selection", "Zoom to the selection", "Z"),
    ("listen.pan_left", "Look further to the left", "Alt+Left"),
    ("listen.pan_right", "Look further to the right", "Alt+Right"),
    ("listen.zoom_all", "Show the whole take", "Ctrl+0"),
    ("listen.lane_next", "Choose the next lane", "L"),
    ("listen.lane_taller", "Make the chosen lane taller", "Shift+Up"),
    ("listen.lane_lower", "Make the chosen lane lower", "Shift+Down"),
    ("listen.lane_hide", "Hide the chosen lane", "H"),
    ("listen.lanes_usual", "All lanes, at their usual heights", "Shift+H"),
    *(
        (f"listen.mark_{n}", f"Marker of category {n} where it plays", str(n))
        for n in range(1, MARKER_KEY_COUNT + 1)
    ),
    ("listen.next_marker", "To the next marker", "M"),
    ("listen.previous_marker", "To the marker before", "Shift+M"),
    ("listen.edit_marker", "Write the text of the chosen marker", "E"),
    ("listen.move_marker", "Move the chosen marker to the playing position", "Shift+E"),
    ("listen.delete_marker", "Delete the chosen marker", "Del"),
    ("listen.previous_take", "To the take before, same passage", "Ctrl+Left"),
    ("listen.next_take", "To the next take, same passage", "Ctrl+Right"),
    ("listen.notes", "Show the notes", "Alt+1"),
    ("listen.markers", "Show the markers", "Alt+2"),
    ("listen.numbers", "Show the numbers", "Alt+3"),
    ("listen.take", "Show the take's settings", "Alt+4"),
    ("listen.compare", "Compare this take with the first of its passage", "C"),
    ("listen.delete_take", "Delete this take", "Ctrl+Del"),
)
