// What the service answers instead of an answer, in a form that the page can
// make a sentence of: {code, message, problems, retryMs}.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import grpc from '@grpc/grpc-js';
import protobuf from 'protobufjs';

// The details of a status are messages inside a message, which the gRPC client
// leaves as bytes.
export class RefusalReader {
  constructor(protos) {
    const root = new protobuf.Root();
    root.resolvePath = (origin, target) => {
      const path = join(protos, target);
      return existsSync(path) ? path : target;
    };
    root.loadSync(['google/rpc/status.proto', 'google/rpc/error_details.proto']);
    this.root = root;
  }

  read(error) {
    const refusal = {
      code: grpc.status[error.code] ?? 'UNKNOWN',
      message: error.details ?? error.message ?? '',
      problems: [],
    };
    const bytes = error.metadata?.get('grpc-status-details-bin')?.[0];
    if (!bytes) return refusal;
    try {
      const status = this.root.lookupType('google.rpc.Status').decode(bytes);
      for (const detail of status.details) this.#add(refusal, detail);
    } catch {
      // Details that cannot be read leave the code and the message.
    }
    return refusal;
  }

  #add(refusal, detail) {
    const name = detail.type_url.split('/').at(-1);
    if (name === 'google.rpc.BadRequest') {
      const { fieldViolations } = this.root.lookupType(name).decode(detail.value);
      refusal.problems = fieldViolations.map(({ field, description }) =>
        ({ field, description }));
    } else if (name === 'google.rpc.RetryInfo') {
      const { retryDelay } = this.root.lookupType(name).decode(detail.value);
      refusal.retryMs = Number(retryDelay?.seconds ?? 0) * 1000 +
        Math.ceil((retryDelay?.nanos ?? 0) / 1e6);
    }
  }
}
