"""A corpus explained alone, then by two workers of which one is killed in the
middle of a shard: both results have to be the same bytes.

  rehearsal.py BUILD [PGN_FOLDER] [--keep FOLDER]
  rehearsal.py BUILD [PGN_FOLDER] --measure

--measure tells what 1, 2 and 3 workers do in the same time, in turns. Without a
folder, the corpus is a course of ours, many times over.
"""
import argparse
import contextlib
import os
import pathlib
import shutil
import signal
import sys
import tempfile
import time

import corpus
import rates  # found on the path of corpus

COURSE = pathlib.Path(__file__).resolve().parents[1] / "lesson"
COPIES = 40
WORKERS = 1, 2, 3
ROUNDS = 2


def copies_of_the_course(folder):
    text = (COURSE / "autumn_course.pgn").read_bytes()
    folder.mkdir()
    for n in range(COPIES):
        (folder / f"course{n:02}.pgn").write_bytes(text)
    return folder


def kill_in_a_shard(results, workers):
    """Kills one of the workers that are at work. False where none was seen."""
    for part in shards.unfinished(results):
        worker = next((worker for worker in workers if worker.poll() is None and
                       part.name.endswith(f".{worker.pid}.part")), None)
        if worker is None:
            continue
        worker.send_signal(signal.SIGSTOP)
        os.waitpid(worker.pid, os.WUNTRACED)  # until it has stopped
        if part.exists():  # it cannot be done any more
            worker.kill()
            worker.wait()
            print(f"killed a worker at {part.name}", flush=True)
            return True
        worker.send_signal(signal.SIGCONT)
    return False


def files(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def rehearse(build, cuts, folder):
    begin = time.monotonic()
    alone = folder / "alone"
    alone.mkdir(parents=True)
    count = corpus.explain_alone(cuts, alone, True)
    print(f"alone: {count} positions in {len(cuts)} shards, "
          f"{time.monotonic() - begin:.0f} s", flush=True)

    together = folder / "together"
    together.mkdir()
    killed = False
    with contextlib.ExitStack() as stack:
        cluster = corpus.Cluster(build, 2)
        stack.callback(cluster.end)

        def lose_one():
            nonlocal killed
            killed = killed or kill_in_a_shard(together, cluster.workers)

        with cluster.connect() as client:
            begin = time.monotonic()
            corpus.explain_on(client, cuts, together, True, lose_one)
    if not killed:
        print("no worker was seen at work: a longer corpus, please")
        return 1
    made = files(together)
    if made != files(alone):
        print("the results differ")
        return 1
    size = sum(map(len, made.values()))
    print(f"two workers, one of them killed: the same {size} bytes in "
          f"{len(made)} files, {time.monotonic() - begin:.0f} s")
    return 0


def measure(build, cuts, folder):
    seen = {workers: [] for workers in WORKERS}
    for turn in range(ROUNDS):
        for workers in WORKERS:
            results = folder / "results"
            results.mkdir(parents=True)
            with contextlib.ExitStack() as stack:
                cluster = corpus.Cluster(build, workers)
                stack.callback(cluster.end)
                with cluster.connect() as client:
                    client.run(__import__, "shards")  # before the clock starts
                    begin = time.monotonic()
                    count = corpus.explain_on(client, cuts, results, True)
                    seen[workers].append(count / (time.monotonic() - begin))
            shutil.rmtree(results)
    rates.tell({f"{workers} worker{'s' if workers > 1 else ''}": rate
                for workers, rate in seen.items()}, "1 worker", "one")
    return 0


def main():
    parser = argparse.ArgumentParser(
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build")
    parser.add_argument("pgn_folder", nargs="?", type=pathlib.Path)
    parser.add_argument("--keep", type=pathlib.Path,
                        help="an empty folder for the results")
    parser.add_argument("--measure", action="store_true")
    options = parser.parse_args()
    os.environ.update(corpus.places(options.build))
    global shards  # it reads the environment
    import shards
    with tempfile.TemporaryDirectory(prefix="assay-corpus-") as temporary:
        temporary = pathlib.Path(temporary)
        pgn = options.pgn_folder or copies_of_the_course(temporary / "pgn")
        cuts = list(shards.cut(pgn.resolve(), 1))
        folder = (options.keep or temporary).resolve()
        if options.measure:
            return measure(options.build, cuts, folder)
        return rehearse(options.build, cuts, folder)


if __name__ == "__main__":
    sys.exit(main())
