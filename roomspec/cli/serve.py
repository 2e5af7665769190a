"""`roomspec serve`: the language server."""

import importlib

import click


@click.command(short_help="Serve an editor: findings while typing, mends, completion, hover.")
@click.option("--tcp", type=click.IntRange(0, 65535), metavar="PORT", help="Listen on this port of this machine only.")
@click.option("--stdio", is_flag=True, hidden=True, help="Standard input and output; the default.")
def serve(tcp: int | None, stdio: bool) -> int:  # noqa: ARG001 - editors pass --stdio unasked
    """Serve one editor over standard input and output, or over TCP, until it leaves."""
    server = importlib.import_module("roomspec_lsp.serving")
    if tcp is None:
        return int(server.serve_stdio())
    try:
        return int(server.serve_tcp(tcp))
    except OSError as trouble:
        raise click.ClickException(f"Port {tcp} cannot be used: {trouble.strerror}.") from trouble
