"""The command `wellstrung`, and `python -m wellstrung`."""

import gc
import sys


def main(arguments: list[str] | None = None) -> int:
    """Run the command line, on the arguments of this process by default; returns the exit code."""
    if arguments is None:  # a process of its own: nothing that it loads is garbage
        gc.disable()
    try:
        from wellstrung.commands import cli

        return cli.main(arguments)
    except KeyboardInterrupt:  # before anything is begun
        return 2


if __name__ == "__main__":
    # `-m` puts the folder one stands in first on the path, and there the plans lie: no code
    # beside a plan may run, be it named like one of ours or announced as a plugin
    if not sys.flags.safe_path:
        del sys.path[0]
    sys.exit(main())
