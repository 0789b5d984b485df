"""The program keeps to itself: nothing in it can listen on the network."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ROOMS = ("app", "analysis", "audio", "sample_audio")
SERVERS = {
    "asyncio", "http.server", "multiprocessing.managers", "socket", "socketserver", "wsgiref",
    "xmlrpc.server", "PySide6.QtNetwork", "PySide6.QtWebSockets", "PySide6.QtHttpServer",
}  # fmt: skip
CLASSES = {"QTcpServer", "QLocalServer", "QUdpSocket", "QWebSocketServer", "QHttpServer"}


def servers_in(text: str) -> set[str]:
    """Give what a module uses that could listen."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            names = {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            module = node.module or ""
            names = {module, *(f"{module}.{alias.name}" for alias in node.names)}
        elif isinstance(node, ast.Name | ast.Attribute):
            names = set()
            found |= {node.id if isinstance(node, ast.Name) else node.attr} & CLASSES
        else:
            continue
        found |= {s for s in SERVERS for n in names if n == s or n.startswith(f"{s}.")}
    return found


def test_no_module_of_the_program_can_listen():
    modules = [path for room in ROOMS for path in (ROOT / room).rglob("*.py")]
    assert len(modules) > 200
    found = {
        str(path.relative_to(ROOT)): servers
        for path in modules
        if (servers := servers_in(path.read_text(encoding="utf-8")))
    }
    assert found == {}


@pytest.mark.parametrize(
    "text",
    [
        "import http.server",
        "from http import server",
        "from socketserver import TCPServer",
        "def f():\n    import socket",
        "from PySide6.QtNetwork import QTcpServer",
        "from PySide6 import QtNetwork\nQtNetwork.QLocalServer()",
    ],
)
def test_a_server_would_be_found(text):
    assert servers_in(text)
