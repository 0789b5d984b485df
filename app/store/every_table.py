"""All tables together: their modules are loaded one by one otherwise, as they are wanted."""

from app.store import following_models, keeping_models, listening_models
from app.store.models import METADATA

__all__ = ["METADATA", "following_models", "keeping_models", "listening_models"]
