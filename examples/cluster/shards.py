"""Shards of a corpus: a few games of a PGN file each, explained into a file of
JSON lines each. Workers import this, and read ASSAY (the program, which knows
PGN) and ASSAY_C (the library) from their environment."""
import dataclasses
import functools
import os
import pathlib
import re
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "python"))
import assay  # noqa: E402  (found on the path above)

# A game begins with the tags' first, after an empty line.
_GAME = re.compile(rb"(?:\A|(?<=\n\n)|(?<=\r\n\r\n))\[Event ")


@dataclasses.dataclass(frozen=True)
class Shard:
    name: str  # of the result
    path: str
    first: int  # bytes of the file
    end: int


def cut(folder, games):
    """The shards of a folder's PGN files, `games` at most in each, in order.
    Their names sort in that order, too."""
    for path in sorted(pathlib.Path(folder).glob("*.pgn")):
        text = path.read_bytes()
        starts = [match.start() for match in _GAME.finditer(text)] or [0]
        cuts = [0, *starts[games::games], len(text)]
        for n, (first, end) in enumerate(zip(cuts, cuts[1:])):
            yield Shard(f"{path.stem}-{n:07}.jsonl", str(path), first, end)


def _fen(epd):
    """The FEN of an EPD record as `assay score` writes it."""
    fields = epd.split()
    counts = dict(re.findall(r"(hmvc|fmvn) (\d+);", epd))
    return " ".join([*fields[:4], counts.get("hmvc", "0"),
                     counts.get("fmvn", "1")])


def _positions(shard):
    """Those of the games' main lines, in order; None for a game's fault."""
    with open(shard.path, "rb") as file:
        file.seek(shard.first)
        text = file.read(shard.end - shard.first)
    told = subprocess.run([os.environ["ASSAY"], "score", "-", "--pgn",
                           "--format=epd", "--jobs=1"], input=text,
                          stdout=subprocess.PIPE, check=False)
    if told.returncode not in (0, 1):  # 1: a game was not read to its end
        raise RuntimeError(f"{shard}: exit code {told.returncode}")
    return [None if line == "error" else _fen(line)
            for line in told.stdout.decode().splitlines()]


@functools.cache
def _explainer():
    return assay.Explainer()


def unfinished(folder):
    """What a worker has begun to write; its name ends with the process."""
    return sorted(pathlib.Path(folder).glob("*.part"))


def explain(shard, folder, static_only):
    """Writes the shard's result beside its name, then renames it: what has the
    name is whole, and equal whoever made it. Gives its number of positions, or
    None where it is there already."""
    result = pathlib.Path(folder, shard.name)
    if result.exists():
        return None
    count = 0
    part = result.with_suffix(f".{os.getpid()}.part")
    with open(part, "w", encoding="utf-8") as out:
        for fen in _positions(shard):
            if fen is None:
                out.write('{"error":"the game cannot be read any further"}\n')
                continue
            out.write('{"explanation":' +
                      _explainer().explain_json(fen, static_only) + "}\n")
            count += 1
        out.flush()
        os.fsync(out.fileno())
    os.replace(part, result)
    return count
