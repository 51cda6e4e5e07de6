// Node's own gRPC client with the .proto files, as a user of another language
// would have them: nothing here is generated or shared with the server.

import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import grpc from '@grpc/grpc-js';
import protoLoader from '@grpc/proto-loader';
import protobuf from 'protobufjs';

const protos = join(dirname(fileURLToPath(import.meta.url)), '../../../proto');
const definition = protoLoader.loadSync(
  ['assay/v1/explainer.proto', 'grpc/health/v1/health.proto'],
  { includeDirs: [protos], longs: Number, enums: String, oneofs: true,
    defaults: true });
const packages = grpc.loadPackageDefinition(definition);

const root = new protobuf.Root();
root.resolvePath = (origin, target) => {
  const path = join(protos, target);
  return existsSync(path) ? path : target;
};
root.loadSync(['google/rpc/status.proto', 'google/rpc/error_details.proto',
  'assay/v1/explainer.proto']);

export { grpc };
export const code = grpc.status;
export const service = '/assay.v1.PositionExplainer/';

// A request that is answered, and soon.
export const good = { position: { fen: '4k3/8/8/8/8/8/4P3/4K3 w - - 0 1' },
  options: { staticOnly: true } };

export function type(name) {
  return root.lookupType(name);
}

export function connect(address, credentials, options = {}) {
  return new packages.assay.v1.PositionExplainer(
    address, credentials ?? grpc.credentials.createInsecure(), options);
}

export function connectHealth(address, credentials, options = {}) {
  return new packages.grpc.health.v1.Health(
    address, credentials ?? grpc.credentials.createInsecure(), options);
}

// Resolves to {response} or {error}.
export function call(client, method, request, { ms = 20000, metadata } = {}) {
  return new Promise((resolve) => {
    client[method](request, metadata ?? new grpc.Metadata(),
      { deadline: Date.now() + ms }, (error, response) =>
        resolve(error ? { error } : { response }));
  });
}

// The same with bytes of our own making, right or wrong.
export function callRaw(client, method, bytes, { ms = 20000 } = {}) {
  return new Promise((resolve) => {
    client.makeUnaryRequest(service + method, (value) => value,
      (value) => value, bytes, new grpc.Metadata(),
      { deadline: Date.now() + ms }, (error, response) =>
        resolve(error ? { error } : { response }));
  });
}

// The typed details of an error: {badRequest, retryInfo}.
export function detailsOf(error) {
  const details = {};
  const [bytes] = error.metadata.get('grpc-status-details-bin');
  if (!bytes) return details;
  for (const any of type('google.rpc.Status').decode(bytes).details) {
    const name = any.type_url.split('/').at(-1);
    const value = type(name).decode(any.value);
    if (name === 'google.rpc.BadRequest') details.badRequest = value;
    if (name === 'google.rpc.RetryInfo') details.retryInfo = value;
  }
  return details;
}

// Sends all requests, reads all answers. Resolves to {answers, error}.
export function stream(client, requests, { ms = 60000 } = {}) {
  return new Promise((resolve) => {
    const answers = [];
    let error = null;
    const both = client.ExplainStream({ deadline: Date.now() + ms });
    both.on('data', (answer) => answers.push(answer));
    both.on('error', (problem) => { error = problem; });
    both.on('status', (status) => resolve({ answers, error, status }));
    let next = 0;
    const write = () => {
      while (next < requests.length) {
        if (!both.write(requests[next++])) {
          both.once('drain', write);
          return;
        }
      }
      both.end();
    };
    write();
  });
}
