"""A journal's writer that is killed while it works; run by ``test_crash.py``.

After each change has been made it prints one line that says so.
"""

import random
import sys
from dataclasses import replace
from pathlib import Path

from app.store.store import open_store
from tests.store.making import make_marker, make_measurement, make_session, make_take


def main(journal: Path, seed: int) -> None:
    choose = random.Random(seed)
    with open_store(journal) as store:
        session = make_session()
        store.sessions.add(session)
        print("ready", flush=True)
        number = 0
        while True:
            number += 1
            take = make_take(session, None, number)
            with store.transaction():  # a take comes with its two markers and its measurement
                store.takes.add(take)
                store.markers.add(make_marker(take, 1.0))
                store.markers.add(make_marker(take, 2.0))
                store.measurements.put(make_measurement(take, curves=choose.randbytes(20_000)))
            print(f"take {take.id}", flush=True)
            marker = make_marker(take, 3.0, text="x" * choose.randrange(2000))
            store.markers.add(marker)
            print(f"marker {marker.id}", flush=True)
            store.takes.replace(replace(take, aim=f"aim {number}"))
            print(f"aim {take.id}", flush=True)
            if choose.random() < 0.3:
                store.markers.remove(marker.id)
                print(f"removed {marker.id}", flush=True)


main(Path(sys.argv[1]), int(sys.argv[2]))
