"""examples/cluster: a corpus explained by workers of which one is killed is, to
the byte, what one machine makes of it, and what the program says.

  cluster_test.py BUILD
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
EXAMPLE = ROOT / "examples" / "cluster"
BUILD = pathlib.Path(sys.argv[1]).resolve()


def run(program, *arguments):
    return subprocess.run([sys.executable, EXAMPLE / program, BUILD, *arguments],
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                          text=True, check=False)


def said(pgn):
    """Lines of the program's own JSON, without the moves that lead to the
    positions: and how many lines tell of faults."""
    told = subprocess.run([BUILD / "bin/assay", "explain", pgn, "--pgn",
                           "--static", "--format=json"], check=False,
                          stdout=subprocess.PIPE)
    lines = told.stdout.splitlines()
    good = [re.sub(rb',"tag":"[^"]*"}$', b"}", line) for line in lines
            if line.startswith(b'{"explanation"')]
    return good, len(lines) - len(good)


def files(folder):
    return {path.name: path.read_bytes()
            for path in sorted(pathlib.Path(folder).iterdir())}


class Cluster(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory(prefix="assay-cluster-test-")
        self.addCleanup(temporary.cleanup)
        self.folder = pathlib.Path(temporary.name)
        self.pgn = self.folder / "pgn"
        self.pgn.mkdir()
        shutil.copy(ROOT / "examples/lesson/autumn_course.pgn", self.pgn)

    def add_files_of_packages(self):
        """Whole games and faulty ones, as rules libraries carry them."""
        found = sorted((ROOT / "tests/node_modules").glob("[!.]*/**/*.pgn"))
        for n, path in enumerate(found):
            shutil.copy(path, self.pgn / f"{n:03}.pgn")
        if len(found) < 50:
            self.skipTest("run npm ci --prefix tests")

    def test_a_worker_is_killed(self):
        self.add_files_of_packages()
        kept = self.folder / "kept"
        told = run("rehearsal.py", self.pgn, "--keep", kept)
        self.assertEqual(told.returncode, 0, told.stdout + told.stderr)
        self.assertIn("killed a worker at", told.stdout)
        together = files(kept / "together")
        self.assertEqual(together, files(kept / "alone"))
        self.assertFalse([name for name in together
                          if not name.endswith(".jsonl")])
        positions = 0
        for pgn in sorted(self.pgn.iterdir()):
            lines = b"".join(text for name, text in together.items()
                             if name.startswith(f"{pgn.stem}-")).splitlines()
            good = [line for line in lines
                    if line.startswith(b'{"explanation"')]
            expected, faults = said(pgn)
            self.assertEqual(good, expected, pgn)
            self.assertEqual(len(lines) - len(good), faults, pgn)
            positions += len(good)
        self.assertGreater(positions, 5000)

    def test_goes_on_with_what_is_missing(self):
        results = self.folder / "results"
        options = self.pgn, results, "--static", "--games=1"
        told = run("corpus.py", *options, "--alone")
        self.assertEqual(told.returncode, 0, told.stderr)
        whole = files(results)
        games = (self.pgn / "autumn_course.pgn").read_text().count("[Event ")
        self.assertEqual(len(whole), games + 1)  # the options
        names = sorted(whole)
        for name in names[:2]:
            (results / name).unlink()
        again = run("corpus.py", *options, "--workers=1")
        self.assertEqual(again.returncode, 0, again.stderr)
        self.assertEqual(files(results), whole)
        lines = sum(whole[name].count(b"\n") for name in names[:2])
        self.assertIn(f"\n{lines} positions explained", f"\n{again.stdout}")
        # With other options nothing is mixed.
        other = run("corpus.py", self.pgn, results, "--games=1", "--alone")
        self.assertEqual(other.returncode, 1)
        self.assertIn("other options", other.stderr)
        self.assertEqual(files(results), whole)


if __name__ == "__main__":
    try:
        import distributed  # noqa: F401  (is it there?)
    except ImportError:
        print("skipped: no python3-distributed; .ci/install cluster")
        sys.exit(77)
    unittest.main(argv=sys.argv[:1])
