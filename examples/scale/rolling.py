"""Streams positions through three replicas while each in turn is killed.

  rolling.py BUILD [--positions N] [--through proxy|client] [--keep FOLDER]
  rolling.py BUILD --ratio [--positions N]

The first explains N positions by counting alone, through HAProxy, then without
it by the client's own round robin; every server is killed (SIGKILL) once on the
way and started again. It fails unless each line came once, in order, with the
score that the library gives. The second measures: one server, three, and three
behind the proxy, in turns.
"""
import argparse
import collections
import os
import pathlib
import random
import subprocess
import sys
import tempfile
import time

import replicas
import children  # found on the path of replicas
import rates

STREAMS = 8
RUN = 200  # lines that a stream of the client takes
ROUNDS = 5


def positions(count):
    """Different positions, all legal: full armies, the kings on e1 and e8,
    the other pieces shuffled behind pawns of which none has left its half."""
    rand = random.Random(64)
    seen = {}
    while len(seen) < count:
        board = [["."] * 8 for _ in range(8)]
        for row, first, step in (0, "k", 1), (7, "K", -1):
            pieces = rand.sample("rrnnbbq", 7)
            pieces.insert(4, "k")
            board[row] = [piece if first == "k" else piece.upper()
                          for piece in pieces]
            for file in range(8):
                pawn = "p" if first == "k" else "P"
                board[row + step * rand.randint(1, 3)][file] = pawn
        text = "/".join("".join(row) for row in board)
        for run in range(8, 0, -1):
            text = text.replace("." * run, str(run))
        seen[f"{text} {rand.choice('wb')} - - 0 1"] = None
    return list(seen)


def stream(build, address, source, output, **more):
    return children.start(
        [build / "bin/stream_file_example", "--static", "--streams", STREAMS,
         address, source, output], **more)


def scores(build, fens):
    """By the library, without any server."""
    told = subprocess.run([build / "bin/assay", "score", "-"], check=True,
                          input="\n".join(fens), stdout=subprocess.PIPE,
                          text=True)
    return told.stdout.split()


def by_round_robin(servers):
    return "ipv4:" + ",".join(server.address for server in servers)


def verify(output, expected):
    """What is wrong with the lines of an output, counted by kind."""
    rows = [line.split("\t") for line in
            output.read_text(encoding="utf-8").splitlines()]
    times = collections.Counter(row[0] for row in rows)
    return {
        "lost": sum(times[str(n)] == 0 for n in range(len(expected))),
        "twice": sum(count > 1 for count in times.values()),
        "out of order": sum(row[0] != str(n) for n, row in enumerate(rows)),
        "with another score": sum(row[1] != score for row, score
                                  in zip(rows, expected)),
    }


class Lines:
    """How many lines a growing file has."""

    def __init__(self, path):
        path.touch()
        self._file = open(path, "rb")
        self._seen = 0

    def __call__(self):
        self._seen += self._file.read().count(b"\n")
        return self._seen


def feed(source, fens, servers, client, is_back, answered):
    """Writes the positions, and kills each server when it has begun to answer
    those of a part; it comes back after another part."""
    part = len(fens) // (2 * len(servers) + 3) // RUN * RUN
    given = 0
    with open(source, "w", encoding="ascii") as pipe:
        def give(count):
            nonlocal given
            pipe.writelines(f"{fen}\n" for fen in fens[given:given + count])
            pipe.flush()
            given += count

        def give_until_used(server, before=0):
            """More, whenever all is answered and none of it was its work: who
            is reached is not yet one who is asked."""
            while (server.positions() <= before and given < len(fens)
                   and client.poll() is None):
                if answered() >= given:
                    give(RUN)
                time.sleep(0.01)

        for server in servers:
            give_until_used(server)
        for name, server in zip(replicas.NAMES, servers):
            before = server.positions()
            give(part)
            give_until_used(server, before)
            server.kill()
            give(part)
            server.restart()
            replicas.wait_for(lambda: is_back(name, server), f"{name} back")
            give_until_used(server)
        give(len(fens))


def roll(build, through, fens, folder):
    """Gives how often a stream was begun again."""
    servers = [replicas.Assayd(build / "bin/assayd") for _ in replicas.NAMES]
    proxy = replicas.Proxy(servers, folder) if through == "proxy" else None
    source = folder / "positions"
    os.mkfifo(source)
    output = folder / f"{through}.tsv"
    log = folder / f"{through}.log"
    with open(log, "w", encoding="utf-8") as told:
        client = stream(build, proxy.address if proxy
                        else by_round_robin(servers), source,
                        output, stderr=told)
    try:
        feed(source, fens, servers, client, lambda name, server: (
            name in proxy.up() if proxy
            else replicas.is_connected_to(server.port)), Lines(output))
    except BrokenPipeError:
        pass  # the client has ended, and says why
    source.unlink()
    if client.wait() != 0:
        raise RuntimeError(f"the client failed:\n{log.read_text()}")
    idle = [name for name, server in zip(replicas.NAMES, servers)
            if server.positions() == 0]
    if idle:
        raise RuntimeError(f"came back and got nothing: {idle}")
    children.end_all()
    return log.read_text().count("going on after")


def rolling(build, ways, count, folder):
    fens = positions(count)
    expected = scores(build, fens)
    right = True
    for through in ways:
        begin = time.monotonic()
        again = roll(build, through, fens, folder)
        took = time.monotonic() - begin
        wrong = verify(folder / f"{through}.tsv", expected)
        right = right and not any(wrong.values())
        print(f"{through}: {count} positions in {took:.0f} s, three servers "
              f"killed and started again, {again} streams begun again; " +
              ", ".join(f"{n} {kind}" for kind, n in wrong.items()),
              flush=True)
    return 0 if right else 1


def ratio(build, count, folder):
    servers = [replicas.Assayd(build / "bin/assayd") for _ in replicas.NAMES]
    proxy = replicas.Proxy(servers, folder)
    ways = {"one server": servers[0].address,
            "three by round robin": by_round_robin(servers),
            "three behind the proxy": proxy.address}
    source = folder / "positions"
    source.write_text("".join(f"{fen}\n" for fen in positions(count)))
    seen = {way: [] for way in ways}
    for turn in range(-1, ROUNDS):  # the first warms up
        for way, address in ways.items():
            output = folder / "output"
            output.unlink(missing_ok=True)
            begin = time.monotonic()
            if stream(build, address, source, output).wait() != 0:
                return 1
            if turn >= 0:
                seen[way].append(count / (time.monotonic() - begin))
    rates.tell(seen, "one server", "one server")
    return 0


def main():
    parser = argparse.ArgumentParser(description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("--positions", type=int)
    parser.add_argument("--through", choices=("proxy", "client"))
    parser.add_argument("--keep", type=pathlib.Path,
                        help="an empty folder for what was answered")
    parser.add_argument("--ratio", action="store_true")
    options = parser.parse_args()
    ways = [options.through] if options.through else ["proxy", "client"]
    with tempfile.TemporaryDirectory(prefix="assay-scale-") as temporary:
        folder = options.keep or pathlib.Path(temporary)
        folder.mkdir(parents=True, exist_ok=True)
        try:
            if options.ratio:
                return ratio(options.build, options.positions or 10000, folder)
            return rolling(options.build, ways, options.positions or 100000,
                           folder)
        finally:
            children.end_all()


if __name__ == "__main__":
    sys.exit(main())
