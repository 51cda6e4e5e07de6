"""examples/scale: positions streamed while replicas are killed, each answered
once and in order; what the proxy knows of the replicas; and no process is left.

  scale_test.py BUILD
"""
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

EXAMPLE = pathlib.Path(__file__).resolve().parents[2] / "examples" / "scale"
sys.path.insert(0, str(EXAMPLE))
import replicas  # noqa: E402  (found on the path above)
import rolling  # noqa: E402

BUILD = pathlib.Path(sys.argv[1])
POSITIONS = 10500
ROLLING = [sys.executable, EXAMPLE / "rolling.py", BUILD]


def explained(fens):
    """What the program says without a server, as lines of the example."""
    told = subprocess.run(
        [BUILD / "bin/assay", "explain", "-", "--static", "--format=json"],
        input="\n".join(fens), stdout=subprocess.PIPE, check=True, text=True)
    for number, line in enumerate(told.stdout.splitlines()):
        explanation = json.loads(line)["explanation"]
        yield (f"{number}\t{explanation.get('scoreCp', 0)}"
               f"\t{explanation['summary']}")


def alive(pid):
    try:
        status = pathlib.Path(f"/proc/{pid}/status").read_text()
    except FileNotFoundError:
        return False
    return "State:\tZ" not in status


class Scale(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory(prefix="assay-scale-test-")
        self.addCleanup(temporary.cleanup)
        self.addCleanup(replicas.children.end_all)
        self.folder = pathlib.Path(temporary.name)

    def test_every_position_once_and_in_order(self):
        told = subprocess.run(
            [*ROLLING, "--positions", str(POSITIONS), "--keep", self.folder],
            stdout=subprocess.PIPE, text=True)
        self.assertEqual(told.returncode, 0, told.stdout)
        fens = rolling.positions(POSITIONS)
        self.assertEqual(len(set(fens)), POSITIONS)
        expected = list(explained(fens))
        self.assertEqual(len(expected), POSITIONS)
        for way in "proxy", "client":
            got = (self.folder / f"{way}.tsv").read_text().splitlines()
            self.assertEqual(len(got), POSITIONS)
            for line, right in zip(got, expected):
                self.assertEqual(line, right)
            # The kills hit streams at work.
            log = (self.folder / f"{way}.log").read_text()
            self.assertIn("going on after", log)

    def test_a_replica_that_says_so_gets_no_calls(self):
        """NOT_SERVING is enough: it is there, listens and answers."""
        servers = [replicas.Assayd(BUILD / "bin/assayd",
                                   options=["--drain-notice-ms=60000"])
                   for _ in replicas.NAMES]
        proxy = replicas.Proxy(servers, self.folder)
        servers[1].process.terminate()
        replicas.wait_for(lambda: proxy.up() == {"one", "three"}, "two down")
        self.assertIsNone(servers[1].process.poll())
        source = self.folder / "positions"
        source.write_text("\n".join(rolling.positions(3000)))
        client = rolling.stream(BUILD, proxy.address, source,
                                self.folder / "output")
        self.assertEqual(client.wait(), 0)
        counts = [server.positions() for server in servers]
        self.assertEqual(counts[1], 0)
        self.assertEqual(sum(counts), 3000)
        self.assertGreater(min(counts[0], counts[2]), 0)

    def test_no_process_is_left(self):
        run = subprocess.Popen([*ROLLING, "--keep", self.folder],
                               stdout=subprocess.DEVNULL)
        self.addCleanup(run.wait)
        self.addCleanup(run.kill)
        children = pathlib.Path(f"/proc/{run.pid}/task/{run.pid}/children")
        # Three servers, the proxy and the client.
        replicas.wait_for(lambda: len(children.read_text().split()) == 5,
                          "children")
        pids = children.read_text().split()
        run.kill()
        run.wait()
        replicas.wait_for(lambda: not any(map(alive, pids)), "their end")


if __name__ == "__main__":
    if shutil.which("haproxy", path="/usr/sbin:/usr/bin:/usr/local/sbin") is None:
        print("skipped: no haproxy; .ci/install proxy")
        sys.exit(77)
    unittest.main(argv=sys.argv[:1])
