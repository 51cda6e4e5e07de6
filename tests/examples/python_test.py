"""The Python example says what the program says: python_test.py ASSAY"""
import json
import pathlib
import subprocess
import sys
import threading

EXAMPLE = pathlib.Path(__file__).parents[2] / "examples" / "python"
sys.path.insert(0, str(EXAMPLE))
import assay  # noqa: E402  (found on the path above)

FENS = [
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
    "r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10",
    "4k3/8/8/8/8/8/4P3/4K3 b - - 0 1",
]


def said(program, *arguments):
    return subprocess.run([program, *arguments], capture_output=True,
                          check=True, text=True).stdout


def main():
    program = sys.argv[1]
    explainer = assay.Explainer()
    assert said(program, "--version").split()[1] == assay.VERSION
    for fen in FENS:
        for language in "en", "de":
            printed = json.loads(said(program, "explain", "--format", "json",
                                      "--language", language, fen))
            got = explainer.explain(fen, language=language)
            assert got == printed["explanation"], fen
        for audience in "newcomer", "club", "expert":
            printed = json.loads(said(program, "explain", "--format", "json",
                                      "--audience", audience, fen))
            got = explainer.explain(fen, audience=audience)
            assert got == printed["explanation"], (fen, audience)
        assert explainer.score(fen) == int(said(program, "score", fen)), fen

    for bad, word in (("8/8 w", "placement"), ("4k3/8 \0", "zero byte")):
        try:
            explainer.score(bad)
        except ValueError as fault:
            assert word in str(fault), fault
        else:
            raise AssertionError(f"{bad!r} was read")

    found = []
    threads = [threading.Thread(
        target=lambda: found.append(explainer.explain(FENS[1])))
               for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(found) == 3 and found[0] == found[1] == found[2]

    told = said(sys.executable, EXAMPLE / "explain.py", FENS[1])
    assert "cp for White: " in told and "plan: White " in told, told


main()
