"""How accurate the measures are on this machine: a table against known truth.

Every row says what was measured, where its truth comes from, the bound, and what came
out. A miss stays in the table as a miss.

The phrases are generated from seeds that are held out: see
:data:`app.services.accuracy.phrases.FIRST_SEED`.
"""

from app.services.accuracy.running import run_check
from app.services.accuracy.table import CheckReport, Row

__all__ = ["CheckReport", "Row", "run_check"]
