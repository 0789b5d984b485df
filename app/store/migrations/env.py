"""Runs inside Alembic, on the connection that app.store.migrating hands over."""

from alembic import context

from app.store.every_table import METADATA

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=METADATA,
    render_as_batch=True,
    compare_type=True,
)
with context.begin_transaction():
    context.run_migrations()
