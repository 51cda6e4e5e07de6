"""Explains a folder of PGN files, on one machine or on a Dask cluster.

  corpus.py BUILD PGN_FOLDER RESULTS --alone
  corpus.py BUILD PGN_FOLDER RESULTS --workers 2
  corpus.py BUILD PGN_FOLDER RESULTS --scheduler tcp://10.0.0.1:8786

RESULTS gets a file of JSON lines for each shard, and keeps those that it has: a
run that was ended goes on with the others. Workers of a scheduler of yours need
the folders under the same names, this folder on PYTHONPATH, and ASSAY and
ASSAY_C. With --workers, scheduler and workers are started here and ended.
"""
import argparse
import contextlib
import itertools
import json
import os
import pathlib
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))
import children  # noqa: E402  (found on the path above)

# Shards that are with the scheduler at a time, for each worker: enough to keep
# it busy, few enough for the scheduler's memory, however long the corpus is.
AHEAD = 4


def places(build):
    """What a worker is told of its surroundings."""
    build = pathlib.Path(build).resolve()
    return {"ASSAY": str(build / "bin/assay"),
            "ASSAY_C": str(build / "service/c/libassay_c.so"),
            "PYTHONPATH": str(HERE)}


class Cluster:
    """A scheduler and workers on this machine, of one thread each."""

    def __init__(self, build, workers):
        self._folder = tempfile.TemporaryDirectory(prefix="assay-dask-")
        self._environment = dict(os.environ, **places(build))
        self._address_file = os.path.join(self._folder.name, "scheduler.json")
        self._start("dask_scheduler", "--host=127.0.0.1", "--port=0",
                    "--no-dashboard", "--no-show",
                    f"--scheduler-file={self._address_file}")
        self.workers = [
            self._start("dask_worker", "--host=127.0.0.1", "--nthreads=1",
                        "--no-nanny", "--no-dashboard", "--memory-limit=0",
                        f"--scheduler-file={self._address_file}",
                        f"--local-directory={self._folder.name}")
            for _ in range(workers)]

    def _start(self, program, *arguments):
        log = open(os.path.join(self._folder.name, "log"), "a")
        with log:
            return children.start(
                [sys.executable, "-m", f"distributed.cli.{program}",
                 *arguments], env=self._environment, stdout=log, stderr=log)

    def connect(self):
        from distributed import Client
        client = Client(scheduler_file=self._address_file, timeout=60)
        client.wait_for_workers(len(self.workers), timeout=60)
        return client

    def end(self):
        children.end_all()
        self._folder.cleanup()


def prepare(results, options):
    """A folder holds the results of one set of options alone."""
    results = pathlib.Path(results)
    results.mkdir(parents=True, exist_ok=True)
    told = results / "options.json"
    if told.exists() and json.loads(told.read_text()) != options:
        sys.exit(f"corpus: {told} tells of other options")
    told.write_text(json.dumps(options))


def explain_alone(shards, results, static_only):
    from shards import explain
    return sum(explain(shard, results, static_only) or 0 for shard in shards)


def explain_on(client, shards, results, static_only, on_done=lambda: None):
    """A shard whose worker is lost goes to another one, and after an error it
    is tried twice more. Gives the number of positions."""
    from distributed import as_completed
    from shards import explain, unfinished

    def submit(shard):
        # By the shard's name alone Dask would think that it knows the result.
        return client.submit(explain, shard, str(results), static_only,
                             pure=False, retries=2)

    shards = iter(shards)
    window = AHEAD * len(client.scheduler_info()["workers"])
    going = as_completed(map(submit, itertools.islice(shards, window)))
    positions = 0
    for future in going:
        positions += future.result() or 0
        future.release()
        for shard in itertools.islice(shards, 1):
            going.add(submit(shard))
        on_done()
    for part in unfinished(results):  # by workers that are no more
        part.unlink()
    return positions


def main():
    parser = argparse.ArgumentParser(
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build")
    parser.add_argument("pgn_folder")
    parser.add_argument("results")
    where = parser.add_mutually_exclusive_group(required=True)
    where.add_argument("--alone", action="store_true")
    where.add_argument("--workers", type=int)
    where.add_argument("--scheduler")
    parser.add_argument("--static", action="store_true",
                        help="no search, some 100 times faster")
    parser.add_argument("--games", type=int, default=20, help="of a shard")
    options = parser.parse_args()

    os.environ.update(places(options.build))
    from shards import cut
    results = pathlib.Path(options.results).resolve()
    prepare(results, {"static": options.static, "games": options.games})
    shards = cut(pathlib.Path(options.pgn_folder).resolve(), options.games)
    with contextlib.ExitStack() as stack:
        if options.alone:
            count = explain_alone(shards, results, options.static)
        else:
            if options.scheduler:
                from distributed import Client
                client = Client(options.scheduler)
            else:
                cluster = Cluster(options.build, options.workers)
                stack.callback(cluster.end)
                client = cluster.connect()
            with client:
                count = explain_on(client, shards, results, options.static)
    print(f"{count} positions explained; results in {results}")


if __name__ == "__main__":
    main()
