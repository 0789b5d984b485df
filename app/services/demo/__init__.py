"""The demo journal: an invented player's eight weeks, rendered and measured for real."""

from app.services.demo.building import build_demo, demo_end, is_demo, refuse_foreign

__all__ = ["build_demo", "demo_end", "is_demo", "refuse_foreign"]
