"""Three assayd on free ports of this machine, with HAProxy before them or not."""
import csv
import json
import os
import pathlib
import signal
import socket
import subprocess
import sys
import threading
import time
import urllib.request

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))
import children  # noqa: E402  (found on the path above)

NAMES = "one", "two", "three"


def wait_for(condition, what, seconds=60):
    """For what nobody tells: looks until it is so."""
    end = time.monotonic() + seconds
    while not condition():
        if time.monotonic() > end:
            raise TimeoutError(what)
        time.sleep(0.01)


class Assayd:
    """A server that serves."""

    def __init__(self, program, address="127.0.0.1:0", options=()):
        self._program = program
        self._options = options
        self._start(address)

    def _start(self, address):
        self.process = children.start(
            [self._program, f"--listen={address}", "--metrics-port=0",
             *self._options], stderr=subprocess.PIPE, text=True)
        for line in self.process.stderr:
            entry = json.loads(line) if line.startswith("{") else {"msg": line}
            if entry["msg"] == "listening":
                self.address = entry["address"]
            elif entry["msg"] == "metrics":
                self._metrics = entry["port"]
            elif entry["msg"] == "serving":
                break
        else:
            raise RuntimeError(f"{self._program} at {address} does not start")
        # Its log would stand still in a full pipe.
        threading.Thread(target=self.process.stderr.read, daemon=True).start()

    @property
    def port(self):
        return int(self.address.rsplit(":", 1)[1])

    def positions(self):
        """How many it has explained since it was started."""
        url = f"http://127.0.0.1:{self._metrics}/metrics"
        with urllib.request.urlopen(url) as page:
            for line in page.read().decode().splitlines():
                if line.startswith('assay_items_total{outcome="ok"}'):
                    return int(float(line.split()[1]))
        return 0

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def restart(self):
        self._start(self.address)


class Proxy:
    """HAProxy before three servers."""

    def __init__(self, servers, folder):
        self._admin = os.path.join(folder, "proxy.sock")
        # The port is taken here and handed over: no other can come between.
        with socket.socket() as front:
            front.bind(("127.0.0.1", 0))
            self.address = f"127.0.0.1:{front.getsockname()[1]}"
            places = {f"ASSAY_{n}": server.address
                      for n, server in enumerate(servers, 1)}
            # Debian has it where only root's PATH looks.
            path = os.environ.get("PATH", "") + ":/usr/sbin"
            self._process = children.start(
                ["haproxy", "-q", "-db", "-f", HERE / "haproxy.cfg"],
                pass_fds=[front.fileno()],
                env=dict(os.environ, PATH=path, ASSAY_ADMIN=self._admin,
                         ASSAY_FRONT=f"fd@{front.fileno()}", **places))
        wait_for(lambda: self.up() == set(NAMES), "three servers that are up")

    def up(self):
        """The names of the servers whose health says that they serve."""
        if self._process.poll() is not None:
            raise RuntimeError("haproxy has ended")
        try:
            with socket.socket(socket.AF_UNIX) as admin:
                admin.connect(self._admin)
                admin.sendall(b"show stat\n")
                table = admin.makefile().read().removeprefix("# ")
        except (FileNotFoundError, ConnectionRefusedError):
            return set()  # not there yet
        # "UP 1/2": on its way down. "* L7OK": another check is going on.
        return {row["svname"] for row in csv.DictReader(table.splitlines())
                if row["svname"] in NAMES and row["status"].startswith("UP")
                and row["check_status"].endswith("L7OK")}


def is_connected_to(port):
    """Whether a client on this machine has a connection to the port. gRPC's
    sockets are of IPv6, with IPv4's addresses in them."""
    for table in "/proc/net/tcp6", "/proc/net/tcp":
        with open(table, encoding="ascii") as lines:
            for line in lines:
                _, _, remote, state, *_ = line.split()
                if remote.endswith(f"0100007F:{port:04X}") and state == "01":
                    return True
    return False
