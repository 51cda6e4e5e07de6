// TLS, mutual TLS, certificates that change, tokens. Certificates are made here
// by openssl.

import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, renameSync, rmSync, symlinkSync,
  writeFileSync, mkdirSync } from 'node:fs';
import { connect as connectSocket } from 'node:tls';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { Assayd, waitFor } from './lib/assayd.mjs';
import { call, code, connect, connectHealth, good as request, grpc }
  from './lib/client.mjs';

const program = process.env.ASSAYD;
const folder = mkdtempSync(join(tmpdir(), 'assayd-'));
after(() => rmSync(folder, { recursive: true }));
const at = (name) => join(folder, name);

function openssl(...args) {
  execFileSync('openssl', args, { stdio: 'pipe' });
}

// An authority of its own name: name.crt, name.key.
function makeAuthority(name) {
  openssl('req', '-x509', '-newkey', 'ec', '-pkeyopt',
    'ec_paramgen_curve:P-256', '-nodes', '-keyout', at(`${name}.key`), '-out',
    at(`${name}.crt`), '-days', '2', '-subj', `/CN=${name}`,
    '-addext', 'basicConstraints=critical,CA:TRUE');
}

// A certificate for localhost, signed by an authority.
function makeCertificate(path, authority, { subject = 'localhost',
  expired = false } = {}) {
  openssl('req', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256',
    '-nodes', '-keyout', `${path}.key`, '-out', `${path}.csr`,
    '-subj', `/CN=${subject}`);
  writeFileSync(`${path}.ext`,
    'subjectAltName=DNS:localhost,IP:127.0.0.1\n');
  const serial = ['-CAcreateserial', '-CAserial', `${path}.srl`];
  if (!expired) {
    openssl('x509', '-req', '-in', `${path}.csr`, '-CA',
      at(`${authority}.crt`), '-CAkey', at(`${authority}.key`), ...serial,
      '-days', '2', '-extfile', `${path}.ext`, '-out', `${path}.crt`);
    return;
  }
  // "x509" dates certificates from now on; "ca" from any day.
  writeFileSync(`${path}.index`, '');
  writeFileSync(`${path}.cnf`, `[ca]
default_ca = c
[c]
database = ${path}.index
new_certs_dir = ${folder}
rand_serial = yes
default_md = sha256
policy = p
[p]
commonName = supplied
`);
  openssl('ca', '-batch', '-config', `${path}.cnf`, '-in', `${path}.csr`,
    '-cert', at(`${authority}.crt`), '-keyfile', at(`${authority}.key`),
    '-startdate', '20200101000000Z', '-enddate', '20200201000000Z',
    '-extfile', `${path}.ext`, '-notext', '-out', `${path}.crt`);
}

makeAuthority('ours');
makeAuthority('theirs');
makeCertificate(at('server'), 'ours');
makeCertificate(at('alice'), 'ours', { subject: 'alice' });
makeCertificate(at('mallory'), 'theirs', { subject: 'mallory' });
makeCertificate(at('stale'), 'ours', { subject: 'stale', expired: true });

const tls = ['--listen=127.0.0.1:0', `--tls-cert=${at('server.crt')}`,
  `--tls-key=${at('server.key')}`];

function credentials(authority, client) {
  const read = (name) => readFileSync(at(name));
  return client
    ? grpc.credentials.createSsl(read(`${authority}.crt`),
      read(`${client}.key`), read(`${client}.crt`))
    : grpc.credentials.createSsl(read(`${authority}.crt`));
}

async function attempt(server, creds, metadata) {
  const client = connect(`localhost:${server.port}`, creds,
    { 'grpc.use_local_subchannel_pool': 1 });
  const result = await call(client, 'Explain', request, { ms: 3000, metadata });
  client.close();
  return result;
}

test('TLS serves those that trust the authority', async () => {
  const server = await Assayd.start(program, tls);
  assert.ok((await attempt(server, credentials('ours'))).response);
  const doubtful = await attempt(server, credentials('theirs'));
  assert.equal(doubtful.error.code, code.UNAVAILABLE);
  const plain = await attempt(server, grpc.credentials.createInsecure());
  assert.ok(plain.error);
  assert.ok((await attempt(server, credentials('ours'))).response);
  assert.equal(await server.stop(), 0);
});

test('mutual TLS refuses wrong, missing and expired certificates', async () => {
  const server = await Assayd.start(program,
    [...tls, `--tls-client-ca=${at('ours.crt')}`]);
  assert.ok((await attempt(server, credentials('ours', 'alice'))).response);
  for (const client of [undefined, 'mallory', 'stale']) {
    const { error } = await attempt(server, credentials('ours', client));
    assert.equal(error?.code, code.UNAVAILABLE, String(client));
  }
  assert.ok((await attempt(server, credentials('ours', 'alice'))).response);
  assert.equal(await server.stop(), 0);
});

// The fingerprint of the certificate that a new connection is shown.
function shown(server) {
  return new Promise((resolve, reject) => {
    const socket = connectSocket({ host: '127.0.0.1', port: server.port,
      ca: readFileSync(at('ours.crt')), servername: 'localhost',
      ALPNProtocols: ['h2'] }, () => {
      resolve(socket.getPeerCertificate().fingerprint256);
      socket.destroy();
    });
    socket.on('error', reject);
  });
}

test('a changed certificate is taken up; old connections go on', async () => {
  for (const name of ['first', 'second']) {
    mkdirSync(at(name));
    makeCertificate(join(at(name), 'server'), 'ours');
  }
  symlinkSync(at('first'), at('current'));
  const server = await Assayd.start(program, ['--listen=127.0.0.1:0',
    `--tls-cert=${at('current/server.crt')}`,
    `--tls-key=${at('current/server.key')}`, '--tls-reload-s=1']);
  const client = connect(`localhost:${server.port}`, credentials('ours'));
  assert.ok((await call(client, 'Explain', request)).response);
  const before = await shown(server);
  symlinkSync(at('second'), at('next'));
  renameSync(at('next'), at('current'));
  await waitFor(async () => (await shown(server)) !== before, 'the new one');
  assert.ok((await call(client, 'Explain', request)).response);
  assert.ok((await attempt(server, credentials('ours'))).response);
  client.close();
  assert.equal(await server.stop(), 0);
});

function bearer(token) {
  const metadata = new grpc.Metadata();
  if (token) metadata.set('authorization', `Bearer ${token}`);
  return metadata;
}

const token = 'correct-horse-battery-staple';
writeFileSync(at('token'), `${token}\n`);

for (const [name, args, creds] of [
  ['without TLS, on this machine alone', ['--listen=127.0.0.1:0'],
    () => grpc.credentials.createInsecure()],
  ['with TLS', tls, () => credentials('ours')],
]) {
  test(`a token is asked for ${name}`, async () => {
    const server = await Assayd.start(program, [...args,
      `--token-file=${at('token')}`, '--log-level=debug', '--metrics-port=0']);
    assert.ok((await attempt(server, creds(), bearer(token))).response);
    for (const wrong of [undefined, 'x', token.replace('c', 'd'),
      `${token}x`]) {
      const { error } = await attempt(server, creds(), bearer(wrong));
      assert.equal(error.code, code.UNAUTHENTICATED);
    }
    const health = connectHealth(`localhost:${server.port}`, creds());
    const { response } = await call(health, 'Check', { service: '' });
    assert.equal(response.status, 'SERVING'); // probes bear no token
    health.close();
    assert.match(await server.metrics(), /assay_tokens_refused_total 4/);
    assert.equal(await server.stop(), 0);
    const log = JSON.stringify(server.log) + server.unread.join();
    assert.ok(!log.includes(token) && !log.includes('Bearer'));
  });
}

test('what would be unsafe or wrong does not start', () => {
  const refused = (args) => {
    const { status, stderr } = spawnSync(program, args, { encoding: 'utf8' });
    return `${status} ${stderr}`;
  };
  assert.match(refused(['--listen=0.0.0.0:0']), /^2 .*no TLS/);
  assert.match(refused(['--listen=0.0.0.0:0', '--insecure',
    `--token-file=${at('token')}`]), /^2 .*in the clear/);
  assert.match(refused([`--tls-cert=${at('server.crt')}`]), /^2 .*both/);
  assert.match(refused([`--tls-cert=${at('server.crt')}`,
    `--tls-key=${at('alice.key')}`]), /^2 .*not the certificate's key/);
  assert.match(refused([`--tls-cert=${at('stale.crt')}`,
    `--tls-key=${at('stale.key')}`]), /^2 .*expired/);
  assert.match(refused([`--tls-cert=${at('none.crt')}`,
    `--tls-key=${at('server.key')}`]), /^3 .*cannot read/);
  writeFileSync(at('short'), 'abc\n');
  assert.match(refused([`--token-file=${at('short')}`]), /^2 .*3 bytes/);
});
