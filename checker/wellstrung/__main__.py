"""`python -m wellstrung`."""

import sys

if __name__ == "__main__":
    # `-m` puts the folder one stands in first on the path, and there the plans lie: no code
    # beside a plan may run, be it named like one of ours or announced as a plugin
    if not sys.flags.safe_path:
        del sys.path[0]
    try:
        from wellstrung.commands.cli import main

        sys.exit(main())
    except KeyboardInterrupt:  # before anything is begun
        sys.exit(2)
