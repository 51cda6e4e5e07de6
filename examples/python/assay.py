"""Assay from Python, through its C interface: no package to build.

    explainer = Explainer()
    explainer.score("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1")      # centipawns
    explainer.explain(fen)["verdict"]["text"]               # a dictionary
    explainer.explain(fen, static_only=True, language="de")
    explainer.explain(fen, audience="newcomer")             # or expert, club

A fault of the input is a ValueError that says what is wrong. The library is
looked for at $ASSAY_C, then where the system has its libraries. Threads may
share an Explainer; Python's own lock is released while the library works.
"""
import ctypes
import ctypes.util
import json
import os


class _Options(ctypes.Structure):
    """assay_explain_options of assay/assay_c.h."""

    _fields_ = [
        ("size", ctypes.c_size_t),
        ("static_only", ctypes.c_int32),
        ("all_claims", ctypes.c_int32),
        ("proof_nodes", ctypes.c_uint64),
        ("language", ctypes.c_char_p),
        ("audience", ctypes.c_int32),
    ]


_AUDIENCES = {"newcomer": 1, "club": 2, "expert": 3}


def _load():
    path = os.environ.get("ASSAY_C") or ctypes.util.find_library("assay_c")
    if path is None:
        raise OSError("libassay_c not found: set ASSAY_C to its path")
    library = ctypes.CDLL(path)
    library.assay_version.restype = ctypes.c_char_p
    # Strings of the library's stay pointers, so that they can be freed.
    library.assay_string_free.argtypes = [ctypes.c_void_p]
    library.assay_explainer_free.argtypes = [ctypes.c_void_p]
    return library


_LIBRARY = _load()
VERSION = _LIBRARY.assay_version().decode()


def _bytes(text):
    if "\0" in text:
        raise ValueError("a zero byte in a text")
    return text.encode()


def _taken(pointer):
    """The text at an address, which is freed."""
    text = ctypes.string_at(pointer).decode() if pointer else "out of memory"
    _LIBRARY.assay_string_free(pointer)
    return text


def _call(function, *arguments):
    error = ctypes.c_void_p()
    code = function(*arguments, ctypes.byref(error))
    if code == 0:
        return
    message = _taken(error)
    raise (ValueError if code == 3 else RuntimeError)(message)


class Explainer:
    """The evaluator, with default weights or the text of a weights file."""

    def __init__(self, weights=None):
        self._pointer = ctypes.c_void_p()
        _call(_LIBRARY.assay_explainer_new,
              None if weights is None else _bytes(weights),
              ctypes.byref(self._pointer))

    def __del__(self):
        _LIBRARY.assay_explainer_free(self._pointer)

    def score(self, fen):
        """Centipawns from White's view, without search."""
        score = ctypes.c_int32()
        _call(_LIBRARY.assay_score, self._pointer, _bytes(fen),
              ctypes.byref(score))
        return score.value

    def explain_json(self, fen, static_only=False, all_claims=False,
                     proof_nodes=0, language="en", audience="club"):
        """The Explanation of assay/v1/explanation.proto, as one line."""
        options = _Options(ctypes.sizeof(_Options), static_only, all_claims,
                           proof_nodes, _bytes(language),
                           _AUDIENCES.get(audience, -1))
        text = ctypes.c_void_p()
        _call(_LIBRARY.assay_explain_json, self._pointer, _bytes(fen),
              ctypes.byref(options), ctypes.byref(text))
        return _taken(text)

    def explain(self, fen, **options):
        """The same as a dictionary."""
        return json.loads(self.explain_json(fen, **options))
