"""Suggestions, listening first, and the picture: rows of the one table of actions."""

LISTEN_EAR_ACTIONS: tuple[tuple[str, str, str], ...] = (
    ("listen.suggestions", "Show what the measurements suggest", "Alt+5"),
    ("listen.next_suggestion", "To the next suggestion", "G"),
    ("listen.previous_suggestion", "To the suggestion before", "Shift+G"),
    ("listen.accept", "Make the chosen suggestion a marker", "A"),
    ("listen.accept_edit", "Make it a marker and write its text", "Shift+A"),
    ("listen.dismiss", "Put the chosen suggestion aside for this passage", "X"),
    ("listen.all_suggestions", "Show all suggestions, or only the clearest five", "Ctrl+G"),
    ("listen.bring_back", "Bring back what was put aside for this passage", "Shift+X"),
    ("listen.ear_first", "Listen first, without measurements, or no longer", "Ctrl+E"),
    ("listen.show_measured", "Show what was measured, after your own markers", "S"),
    ("listen.heard_nothing", "Nothing to mark: show what was measured", "Shift+S"),
    ("listen.picture", "Show the picture, or hide it", "V"),
    ("listen.picture_larger", "Picture larger, or back", "Shift+V"),
)
