"""What is done to a journal that is not open: check it, mend it, go back to a backup."""

from app.services.backing_up import BackupRow, backups_of
from app.store.repair import RepairReport, repair
from app.store.restoring import RestoreReport, restore

__all__ = ["BackupRow", "RepairReport", "RestoreReport", "backups_of", "repair", "restore"]
