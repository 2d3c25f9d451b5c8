"""Open the workbench on this machine, over a store in one file."""

import getpass
import socket
import sys
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path

import uvicorn

from lightoff.job import loads
from lightoff.quantity import LightoffError
from lightoff.record import Register, SqliteStore
from lightoff.surfaces.web.app import create_app

HOST = "127.0.0.1"


USUAL_PORT = 8765


def serve(store: Path, *, port: int | None, examples: bool) -> None:
    """Serve until interrupted; the address goes to stdout as soon as it answers."""
    store.parent.mkdir(parents=True, exist_ok=True)
    register = Register(SqliteStore(store))
    person = _person()
    if examples and not register.units():
        add_examples(register, by=person)
    listening = _listen(port)
    app = create_app(register, by=person)
    config = uvicorn.Config(app, log_level="warning", access_log=False, server_header=False)
    server = _Announced(config, f"http://{HOST}:{listening.getsockname()[1]}/")
    server.run(sockets=[listening])


def add_examples(register: Register, *, by: str) -> None:
    """Put every example job into the store."""
    for path in sorted(example_files(), key=lambda file: file.name):
        job = loads(path.read_text(encoding="utf-8"), form="toml")
        register.add_job(job.tree, by=by)


def example_files() -> list[Traversable]:
    """The example jobs: beside the package when it is installed, else in the checkout."""
    folders: tuple[Traversable, ...] = (
        resources.files("lightoff") / "examples",
        Path(__file__).parents[4] / "examples",
    )
    folder = next((each for each in folders if each.is_dir()), None)
    if folder is None:
        raise LightoffError("the example jobs are not installed with this copy of lightoff")
    return [file for file in folder.iterdir() if file.name.endswith(".toml")]


class _Announced(uvicorn.Server):
    """A server that says where it is once it answers."""

    def __init__(self, config: uvicorn.Config, address: str) -> None:
        super().__init__(config)
        self._address = address

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        await super().startup(sockets)
        print(self._address, flush=True)
        print("The workbench is open at this address; Ctrl-C closes it.", file=sys.stderr)


def _listen(port: int | None) -> socket.socket:
    """A socket on loopback at `port`; where none was asked for, the usual one or any free one."""
    if port is not None:
        return _bound(port)
    try:
        return _bound(USUAL_PORT)
    except LightoffError:
        print(f"Port {USUAL_PORT} is taken: a free one is used instead.", file=sys.stderr)
        return _bound(0)


def _bound(port: int) -> socket.socket:
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((HOST, port))
    except OSError as error:
        listening.close()
        raise LightoffError(
            f"port {port} of {HOST} can't be opened ({error.strerror}): choose another, or --port 0"
        ) from None
    return listening


def _person() -> str:
    """Who writes to the record where nobody says otherwise."""
    try:
        return getpass.getuser()
    except OSError:
        return "somebody"
