"""Write the committed takes anew: ``python -m sample_audio [FOLDER]``."""

import sys
from pathlib import Path

from sample_audio.committed import FOLDER, write_takes

if __name__ == "__main__":
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER
    for path in write_takes(folder):
        print(f"{path}  {path.stat().st_size / 1000:.0f} kB")
