"""JupyterLab on the loopback, opened in headless Chromium: what the browser journeys share."""

from __future__ import annotations

import contextlib
import json
import os
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

CHROMIUM = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
)

STARTING_SECONDS = 90
"""How long a server, a kernel or a page may take to come up before the journey is given up."""


@dataclass(frozen=True)
class Lab:
    """A running JupyterLab: its address, its token and a browser page."""

    address: str
    token: str
    page: Page

    def open_and_run(self, notebook: str) -> None:
        """Open a notebook by its path under the server's folder, run every cell and wait till the kernel is idle."""
        self.page.goto(f"{self.address}/lab/tree/{notebook}?token={self.token}&reset")
        self.page.locator(".jp-Notebook .jp-CodeCell").first.wait_for(timeout=STARTING_SECONDS * 1000)
        self._wait_for_kernel()
        self.page.locator(".jp-Notebook-ExecutionIndicator[data-status=idle]").first.wait_for()
        self.page.get_by_role("menuitem", name="Run", exact=True).click()
        self.page.get_by_role("menuitem", name="Run All Cells", exact=True).click()

    def _wait_for_kernel(self) -> None:
        """Wait until a kernel is idle and the page is connected to it; the page's own word comes too early."""
        end = time.monotonic() + STARTING_SECONDS
        while time.monotonic() < end:
            try:
                with urllib.request.urlopen(f"{self.address}/api/kernels?token={self.token}", timeout=10) as answer:
                    kernels = json.load(answer)
            except urllib.error.HTTPError:
                kernels = []  # a kernel that is just being started is listed before it can be described
            if kernels and all(k["execution_state"] == "idle" and k["connections"] for k in kernels):
                return
            time.sleep(0.1)
        raise TimeoutError("no kernel became idle with the page connected to it")


@contextlib.contextmanager
def running_lab(folder: Path, scratch: Path) -> Iterator[Lab]:
    """Serve `folder` with JupyterLab and yield it with a browser page; both are ended afterwards."""
    with _server(folder, scratch) as (address, token), sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            str(scratch / "profile"),
            executable_path=CHROMIUM,
            args=list(FLAGS),
            headless=True,
            viewport={"width": 1400, "height": 1000},
        )
        try:
            yield Lab(address, token, context.new_page())
        finally:
            context.close()


@contextlib.contextmanager
def _server(folder: Path, scratch: Path) -> Iterator[tuple[str, str]]:
    port, token = _free_port(), secrets.token_hex(16)
    settings = scratch / "settings" / "@jupyterlab" / "apputils-extension"
    settings.mkdir(parents=True)
    # No question about news may cover the notebook.
    (settings / "notification.jupyterlab-settings").write_text(
        '{"fetchNews": "false", "checkForUpdates": false, "doNotDisturbMode": true}'
    )
    own_folders = {
        "JUPYTER_CONFIG_DIR": "config",
        "JUPYTER_DATA_DIR": "data",
        "JUPYTER_RUNTIME_DIR": "runtime",
        "JUPYTERLAB_SETTINGS_DIR": "settings",
        "JUPYTERLAB_WORKSPACES_DIR": "workspaces",
        "IPYTHONDIR": "ipython",
    }
    command = [
        sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root", "--ip=127.0.0.1", f"--port={port}",
        f"--IdentityProvider.token={token}", f"--ServerApp.root_dir={folder}", "--LabApp.news_url=None",
        "--ServerApp.port_retries=0",
    ]  # fmt: skip
    log = scratch / "server.log"
    with log.open("w") as out:
        process = subprocess.Popen(
            command,
            env=os.environ | {name: str(scratch / place) for name, place in own_folders.items()},
            stdout=out,
            stderr=subprocess.STDOUT,
            start_new_session=True,
        )
    address = f"http://127.0.0.1:{port}"
    try:
        _wait_for_server(process, f"{address}/api/status?token={token}", log)
        yield address, token
    finally:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGTERM)
        try:
            process.wait(15)
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            process.wait()


def _wait_for_server(process: subprocess.Popen[bytes], probe: str, log: Path) -> None:
    end = time.monotonic() + STARTING_SECONDS
    while time.monotonic() < end:
        if process.poll() is not None:
            break
        try:
            with urllib.request.urlopen(probe, timeout=10):
                return
        except OSError:
            time.sleep(0.1)
    raise RuntimeError("JupyterLab did not come up: " + log.read_text()[-2000:])


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port
