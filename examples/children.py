"""Programs that an example starts, and that never outlive it."""
import atexit
import ctypes
import os
import signal
import subprocess
import sys

_LIBC = ctypes.CDLL(None)
_PR_SET_PDEATHSIG = 1
_started = []


def start(arguments, **more):
    """Starts a program, from the main thread: it is killed when that ends,
    in whatever way."""
    parent = os.getpid()

    def tie_to_parent():
        _LIBC.prctl(_PR_SET_PDEATHSIG, signal.SIGKILL)
        if os.getppid() != parent:  # it has ended before that
            os._exit(1)

    child = subprocess.Popen(
        [str(argument) for argument in arguments], stdin=subprocess.DEVNULL,
        preexec_fn=tie_to_parent, **more)
    _started.append(child)
    return child


@atexit.register
def end_all():
    for child in _started:
        child.kill()
    for child in _started:
        child.wait()
        if child.stderr:
            child.stderr.close()
    _started.clear()


# An end by signal is an exit like any other.
signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
