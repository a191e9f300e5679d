"""What stops a run: on its own, so that commands can name it without loading any plugin."""


class HostError(Exception):
    """The checker cannot do its job: exit 2."""
