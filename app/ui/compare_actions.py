"""What can be done on the Compare page, and its keys: rows of the one table of actions."""

COMPARE_ACTIONS: tuple[tuple[str, str, str], ...] = (
    ("compare.play", "Play, or pause", "Space"),
    ("compare.switch", "Switch to the same place in the other take", "X"),
    ("compare.earlier", "The take before as B, heard at the same place", "Ctrl+Left"),
    ("compare.later", "The next take as B, heard at the same place", "Ctrl+Right"),
    ("compare.then_now", "Hear the earliest take of the passage, then the latest", "H"),
    ("compare.back", "Back 2 s", "Left"),
    ("compare.forward", "Forward 2 s", "Right"),
    ("compare.start", "To the start", "Home"),
    ("compare.select_from", "Selection starts here", "["),
    ("compare.select_to", "Selection ends here", "]"),
    ("compare.loop", "Loop the selection in both takes, or stop looping", "O"),
    ("compare.slower", "Slower", "-"),
    ("compare.faster", "Faster", "="),
    ("compare.swap", "Swap A and B", "S"),
    ("compare.layout", "Overlaid, or one above the other", "V"),
    ("compare.picture", "Next picture: weeks, note map, before and after", "P"),
    ("compare.large_picture", "The picture in the place of the lanes, or back", "Shift+P"),
    ("compare.trend", "Next measure over the weeks", "T"),
    ("compare.save_picture", "Save the picture as PNG, SVG or CSV", "Ctrl+S"),
)
