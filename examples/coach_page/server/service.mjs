// The explaining service, asked over gRPC. The contract is read in place, from
// proto/ of this repository: nothing is generated.

import grpc from '@grpc/grpc-js';
import protoLoader from '@grpc/proto-loader';
import { RefusalReader } from './refusal.mjs';

// As large as the contract allows an answer to be; gRPC's own default is less.
const mostBytes = 16 * 1024 * 1024;

export class Service {
  constructor(address, protos, { deadlineMs = 20000 } = {}) {
    const definition = protoLoader.loadSync('assay/v1/explainer.proto',
      { includeDirs: [protos], longs: Number, enums: String, defaults: true });
    const { PositionExplainer } =
      grpc.loadPackageDefinition(definition).assay.v1;
    this.address = address;
    this.deadlineMs = deadlineMs;
    this.refusals = new RefusalReader(protos);
    this.client = new PositionExplainer(address,
      grpc.credentials.createInsecure(), {
        'grpc.max_receive_message_length': mostBytes,
        // A server that comes back is to be found soon: a coach is waiting.
        'grpc.initial_reconnect_backoff_ms': 200,
        'grpc.max_reconnect_backoff_ms': 1500,
      });
  }

  // Resolves to {answer} or {refusal}; never rejects. When `signal` says so,
  // the call is cancelled, and the server stops searching for it.
  ask(method, request, signal) {
    return new Promise((resolve) => {
      const call = this.client[method](request, new grpc.Metadata(),
        { deadline: Date.now() + this.deadlineMs }, (error, answer) =>
          resolve(error ? { refusal: this.refusals.read(error) } : { answer }));
      if (signal.aborted) call.cancel();
      signal.addEventListener('abort', () => call.cancel(), { once: true });
    });
  }

  close() {
    this.client.close();
  }
}
