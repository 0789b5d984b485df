"""Alembic environment and the ordered changes of the database."""
