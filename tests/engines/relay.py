#!/usr/bin/env python3
"""Stands between Playwright and a Firefox that does not know one command yet.

Playwright starts every window with colours of its own choosing, and asks over WebDriver BiDi (W3C) for them with a command that a long-term
Firefox of a distribution may not know; it then gives up. Nothing here rests on those colours. This starts Firefox with what it was given, passes
every message on as it comes, and turns that one refusal, "unknown command", into "done". A Firefox that knows the command needs none of it.
Frames are RFC 6455: two bytes, a longer length, a mask from the client's side, and the message.
"""

import asyncio
import json
import os
import re
import sys
from functools import partial

NOT_YET = b'"emulation.setMediaFeaturesOverride"'
LISTENING = re.compile(r"(.*WebDriver BiDi listening on ws://127\.0\.0\.1:)(\d+)(.*)", re.DOTALL)
TEXT, LONGER, LONGEST = 0x81, 126, 127
LONGEST_LINE = 2**26


async def frame(stream: asyncio.StreamReader) -> tuple[bytes, bytes]:
    """The next frame as it came, and what it says."""
    head = await stream.readexactly(2)
    length = head[1] & 0x7F
    more = await stream.readexactly({LONGER: 2, LONGEST: 8}.get(length, 0))
    mask = await stream.readexactly(4 if head[1] & 0x80 else 0)
    body = await stream.readexactly(int.from_bytes(more) if more else length)
    # What is looked for is short; a long message is passed on unread.
    plain = bytes(each ^ mask[place % 4] for place, each in enumerate(body)) if mask and len(body) < 10_000 else body
    return head + more + mask + body, plain


async def pass_on(port: int, client: asyncio.StreamReader, to_client: asyncio.StreamWriter) -> None:
    """One connection, from its first line to its end."""
    firefox, to_firefox = await asyncio.open_connection("127.0.0.1", port)
    # No compression is agreed on, and Firefox only answers who calls it by its own address.
    asked = await client.readuntil(b"\r\n\r\n")
    asked = re.sub(rb"(?i)\r\nsec-websocket-extensions:[^\r]*", b"", asked)
    to_firefox.write(re.sub(rb"(?i)\r\nhost:[^\r]*", b"\r\nHost: 127.0.0.1:%d" % port, asked))
    to_client.write(await firefox.readuntil(b"\r\n\r\n"))
    waiting: set[int] = set()

    async def there() -> None:
        while True:
            raw, said = await frame(client)
            if NOT_YET in said:
                waiting.add(json.loads(said)["id"])
            to_firefox.write(raw)
            await to_firefox.drain()

    async def back() -> None:
        while True:
            raw, said = await frame(firefox)
            answer = json.loads(said) if waiting and b'"unknown command"' in said else {}
            if answer.get("id") in waiting:
                waiting.remove(answer["id"])
                done = json.dumps({"type": "success", "id": answer["id"], "result": {}}).encode()
                raw = bytes((TEXT, len(done))) + done
            to_client.write(raw)
            await to_client.drain()

    ways = [asyncio.create_task(there()), asyncio.create_task(back())]
    await asyncio.wait(ways, return_when=asyncio.FIRST_COMPLETED)
    for way in ways:
        way.cancel()
    await asyncio.gather(*ways, return_exceptions=True)
    to_firefox.close()
    to_client.close()


async def main() -> int:
    """Firefox, from start to end; says its own address where Firefox said the other."""
    firefox = await asyncio.create_subprocess_exec(os.environ["SWARDBOOK_FIREFOX"], *sys.argv[1:], stderr=asyncio.subprocess.PIPE, limit=LONGEST_LINE)
    assert firefox.stderr
    async for line in firefox.stderr:
        said = line.decode(errors="replace")
        if found := LISTENING.match(said):
            server = await asyncio.start_server(partial(pass_on, int(found[2])), "127.0.0.1", 0, limit=LONGEST_LINE)
            said = f"{found[1]}{server.sockets[0].getsockname()[1]}{found[3]}"
        print(said, end="", file=sys.stderr, flush=True)
    return await firefox.wait()


if __name__ == "__main__":
    raise SystemExit(asyncio.run(main()))
