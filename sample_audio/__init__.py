"""Sound with exactly known truth, and the invented scenario of the demo."""
