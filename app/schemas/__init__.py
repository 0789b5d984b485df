"""JSON Schema descriptions of the machine-readable output (draft 2020-12)."""
