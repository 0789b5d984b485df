"""One file a change, in order; a published one is never edited."""
