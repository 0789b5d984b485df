"""What can be done on the Calendar page, and its keys: rows of the one table of actions."""

CALENDAR_ACTIONS: tuple[tuple[str, str, str], ...] = (
    ("calendar.previous", "Year before", "PgUp"),
    ("calendar.next", "Next year", "PgDown"),
    ("calendar.today", "To today", "H"),
    ("calendar.minutes", "Type the minutes of the chosen day", "T"),
    ("calendar.promises", "Promises, or back to the year", "P"),
    ("calendar.record", "What the record shows, or back to the year", "W"),
    ("calendar.names", "Name short and long days, or back to the year", "N"),
    ("calendar.import", "Bring minutes in from a table (CSV), or back to the year", "I"),
    ("calendar.export", "Save the year as a picture, document or table", "Ctrl+S"),
    ("calendar.print", "Print the year", "Ctrl+P"),
    ("calendar.rest", "Rest day, or take the mark away", "R"),
)
