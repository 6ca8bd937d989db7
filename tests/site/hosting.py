"""A book on a server of this machine, below its root, that can be taken down, put up again and given another edition."""

import threading
import time
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from tests.site.tabs import Quiet

PATH = "/lawns/"
ASK = """told => navigator.serviceWorker.ready.then(registration => new Promise(done => {
  const channel = new MessageChannel();
  channel.port1.onmessage = event => done(event.data);
  registration.active.postMessage(told, [channel.port2]);
}))"""
CHOOSE = "([grass, place]) => { Swardbook.preferences.set('grass', grass); Swardbook.preferences.set('place', place); }"
# What the entries of all stores take, as they are stored: bytes by address.
STORED = """async () => {
  const sizes = {};
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) { sizes[request.url] = (await (await cache.match(request)).arrayBuffer()).byteLength; }
  }
  return sizes;
}"""


class Hosted:
    """site: the folder of the edition that is up; a lost address gets its page for that."""

    def __init__(self, site: Path) -> None:
        self.site, self.port = site, 0
        self._serving: ThreadingHTTPServer | None = None
        self.start()

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}{PATH}"

    def start(self) -> None:
        hosted = self

        class Host(Quiet):
            def translate_path(self, path: str) -> str:
                self.directory = str(hosted.site)
                return super().translate_path(path.removeprefix(PATH.rstrip("/")) if path.startswith(PATH) else "/no-such-place" if path != PATH[:-1] else "/")

            def send_head(self) -> object:  # type: ignore[override]  # As the server's own, which leads on to a folder by its path there.
                if self.path == PATH[:-1]:
                    self.send_response(301)
                    self.send_header("Location", PATH)
                    self.send_header("Content-Length", "0")
                    self.end_headers()
                    return None
                return super().send_head()

            def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
                text = (hosted.site / "404.html").read_bytes()
                self.send_response(code)
                self.send_header("Content-Type", "text/html; charset=utf-8")
                self.send_header("Content-Length", str(len(text)))
                self.end_headers()
                self.wfile.write(text)

        self._serving = ThreadingHTTPServer(("127.0.0.1", self.port), partial(Host, directory=str(self.site)))
        self.port = self._serving.server_address[1]
        threading.Thread(target=self._serving.serve_forever, args=(0.02,), daemon=True).start()

    def stop(self) -> None:
        if self._serving is not None:
            self._serving.shutdown()
            self._serving.server_close()
            self._serving = None


def settled(page: Page, wanted: str = "") -> dict[str, Any]:
    """What is kept, once `wanted` (a path) is there and nothing more comes."""
    before, deadline = -1, time.monotonic() + 20
    while True:
        said = page.evaluate(ASK, {"do": "state"})
        if said and said["kept"] == before and said["known"] and (not wanted or wanted in said["pages"]):
            return said  # type: ignore[no-any-return]  # As the worker says it.
        assert time.monotonic() < deadline, f"not kept: {wanted}; {said}"
        before = said["kept"] if said else -1
        time.sleep(0.25)
