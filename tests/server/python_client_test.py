#!/usr/bin/env python3
"""What a client in Python meets: Debian's own grpcio with a descriptor set.

python3 python_client_test.py ASSAYD ASSAY_PROTOSET; exit 77 without grpcio.
"""
import json
import subprocess
import sys
import time
import unittest

try:
    import grpc
    from google.protobuf import descriptor_pb2, descriptor_pool, message_factory
except ImportError as missing:
    print(missing)
    sys.exit(77)

PROGRAM, PROTOSET = sys.argv[1:3]
SERVICE = "/assay.v1.PositionExplainer/"
MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 b - - 1 9"

pool = descriptor_pool.DescriptorPool()
with open(PROTOSET, "rb") as file:
    for proto in descriptor_pb2.FileDescriptorSet.FromString(file.read()).file:
        pool.Add(proto)
factory = message_factory.MessageFactory(pool)


def message(name):
    return factory.GetPrototype(pool.FindMessageTypeByName(name))


def v1(name):
    return message("assay.v1." + name)


class Server:
    def __init__(self, *arguments):
        self.process = subprocess.Popen(
            [PROGRAM, "--listen=127.0.0.1:0", "--max-proof-nodes=50000000", *arguments],
            stderr=subprocess.PIPE, text=True)
        for line in self.process.stderr:
            entry = json.loads(line)
            if entry["msg"] == "listening":
                self.address = entry["address"]
            if entry["msg"] == "serving":
                break

    def stop(self):
        self.process.terminate()
        with self.process.stderr as log:
            log.read()
        return self.process.wait(timeout=30)


def request(fen, tag="", **options):
    made = v1("ExplainRequest")(tag=tag)
    made.position.fen = fen
    made.options.static_only = True
    for name, value in options.items():
        setattr(made.options, name, value)
    return made


class PythonClient(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.server = Server()
        cls.channel = grpc.insecure_channel(cls.server.address)
        cls.explain = cls.channel.unary_unary(
            SERVICE + "Explain", v1("ExplainRequest").SerializeToString,
            v1("ExplainResponse").FromString)
        cls.explain_stream = cls.channel.stream_stream(
            SERVICE + "ExplainStream", v1("ExplainRequest").SerializeToString,
            v1("ExplainStreamResponse").FromString)

    @classmethod
    def tearDownClass(cls):
        cls.channel.close()
        assert cls.server.stop() == 0

    def test_explains_a_position(self):
        answer = self.explain(request(MIDDLEGAME, "a tag"), timeout=20)
        self.assertEqual(answer.tag, "a tag")
        self.assertEqual(answer.explanation.fen, MIDDLEGAME)
        self.assertEqual(answer.explanation.score_cp,
                         sum(entry.value_cp for entry in answer.explanation.ledger))
        self.assertTrue(answer.explanation.summary)

    def test_reads_typed_faults(self):
        with self.assertRaises(grpc.RpcError) as raised:
            self.explain(request("4k3/8/8/8/8/8/8/4K3 x - -", language="fr"), timeout=20)
        self.assertEqual(raised.exception.code(), grpc.StatusCode.INVALID_ARGUMENT)
        details = dict(raised.exception.trailing_metadata())["grpc-status-details-bin"]
        status = message("google.rpc.Status").FromString(details)
        self.assertEqual(status.code, grpc.StatusCode.INVALID_ARGUMENT.value[0])
        bad = message("google.rpc.BadRequest")()
        self.assertTrue(status.details[0].Unpack(bad))
        self.assertEqual([violation.field for violation in bad.field_violations],
                         ["position.fen", "options.language"])
        self.assertIn('found "x"', bad.field_violations[0].description)

    def test_watches_health(self):
        server = Server("--drain-notice-ms=500")
        with grpc.insecure_channel(server.address) as channel:
            watch = channel.unary_stream(
                "/grpc.health.v1.Health/Watch",
                message("grpc.health.v1.HealthCheckRequest").SerializeToString,
                message("grpc.health.v1.HealthCheckResponse").FromString)
            answers = watch(message("grpc.health.v1.HealthCheckRequest")(
                service="assay.v1.PositionExplainer"))
            self.assertEqual(next(answers).status, 1)  # SERVING
            server.process.terminate()
            self.assertEqual(next(answers).status, 2)  # NOT_SERVING
            answers.cancel()
        self.assertEqual(server.stop(), 0)

    def test_streams_2000_positions_with_faults(self):
        bad = set(range(13, 2000, 131))
        fens = [f"4k3/8/8/8/8/8/4P3/4K3 {'?' if n in bad else 'wb'[n % 2]} - - 0 {n + 1}"
                for n in range(2000)]
        answers = list(self.explain_stream(
            (request(fen, str(n)) for n, fen in enumerate(fens)), timeout=120))
        self.assertEqual(len(answers), 2000)
        for n, answer in enumerate(answers):
            self.assertEqual((answer.index, answer.tag), (n, str(n)))
            self.assertEqual(answer.WhichOneof("outcome"),
                             "error" if n in bad else "explanation")
            if n in bad:
                self.assertEqual(answer.error.code, 3)
                self.assertEqual(answer.error.problems[0].field, "side")
            else:
                self.assertEqual(answer.explanation.fen, fens[n])

    def long(self):
        return request(MIDDLEGAME, static_only=False, proof_nodes=50000000)

    def test_hits_a_deadline(self):
        with self.assertRaises(grpc.RpcError) as raised:
            self.explain(self.long(), timeout=0.1)
        self.assertEqual(raised.exception.code(), grpc.StatusCode.DEADLINE_EXCEEDED)

    def test_cancels(self):
        call = self.explain.future(self.long())
        time.sleep(0.1)
        call.cancel()
        self.assertEqual(call.code(), grpc.StatusCode.CANCELLED)
        self.assertTrue(self.explain(request(MIDDLEGAME), timeout=20).explanation.fen)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
