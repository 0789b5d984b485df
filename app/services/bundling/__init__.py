"""Days of a journal for a teacher or a second computer, and what comes back."""
