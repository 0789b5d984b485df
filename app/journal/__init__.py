"""Passagework."""
