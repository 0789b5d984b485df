"""A program whose clock runs until it is killed; run by ``test_clock_crash.py``.

Its time goes on by twenty seconds with every step; each step is printed once it is kept.
"""

import sys
from datetime import datetime, timedelta
from pathlib import Path

from app.journal.kinds import ItemKind
from app.wiring import open_workbench


def main(journal: Path, start: datetime) -> None:
    now = start
    with open_workbench(journal, clock=lambda: now) as bench:
        items = [bench.items.add(ItemKind.OTHER, name).id for name in ("one", "two")]
        bench.clock.start(items[0])
        print("ready", flush=True)
        step = 0
        while True:
            step += 1
            now += timedelta(seconds=20)
            if step % 3 == 0:
                bench.clock.switch(items[step // 3 % 2])
            elif step % 7 == 0:
                bench.clock.touch()
            else:
                bench.clock.beat()
            print(20 * step, flush=True)


main(Path(sys.argv[1]), datetime.fromisoformat(sys.argv[2]))
