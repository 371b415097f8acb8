import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Algorithm, hashRaw, verify } from '@node-rs/argon2';

type Given = {
  readonly passwordHex: string;
  readonly saltHex: string;
  readonly secretHex: string;
  readonly associatedDataHex: string;
  readonly memoryKiB: number;
  readonly passes: number;
  readonly parallelism: number;
  readonly tagLength: number;
};
type Vectors = {
  readonly rfc9106: Given & { readonly tagHex: string };
  readonly phc: readonly { readonly password: string; readonly encoded: string; readonly valid: boolean }[];
};
const vectors = JSON.parse(
  readFileSync(join(__dirname, 'cases', 'argon2id-vectors.json'), 'utf8'),
) as Vectors;

/** The other library is an ES module, which the test runner cannot load: a plain Node.js asks it. */
const OTHER = `
  import { argon2id } from '@noble/hashes/argon2.js';
  const given = JSON.parse(process.argv[1]);
  const bytes = (hex) => Uint8Array.from(Buffer.from(hex, 'hex'));
  const tag = argon2id(bytes(given.passwordHex), bytes(given.saltHex), {
    t: given.passes, m: given.memoryKiB, p: given.parallelism, dkLen: given.tagLength,
    key: bytes(given.secretHex), personalization: bytes(given.associatedDataHex),
  });
  process.stdout.write(Buffer.from(tag).toString('hex'));`;
const byAnother = (given: Given): string =>
  execFileSync(process.execPath, ['--input-type=module', '-e', OTHER, JSON.stringify(given)], {
    encoding: 'utf8',
    cwd: __dirname,
  });

const bytes = (hex: string): Buffer => Buffer.from(hex, 'hex');

describe('the hash that PINs and passwords are kept as', () => {
  it('is Argon2id as a second library has it, which gives the tag of RFC 9106, section 5.3', async () => {
    const { rfc9106 } = vectors;
    expect(byAnother(rfc9106)).toBe(rfc9106.tagHex);

    // Ours takes no associated data, and never has any.
    const given = { ...rfc9106, associatedDataHex: '' };
    const ours = await hashRaw(bytes(given.passwordHex), {
      algorithm: Algorithm.Argon2id,
      memoryCost: given.memoryKiB,
      timeCost: given.passes,
      parallelism: given.parallelism,
      outputLen: given.tagLength,
      salt: bytes(given.saltHex),
      secret: bytes(given.secretHex),
    });
    expect(ours.toString('hex')).toBe(byAnother(given));
  });

  it.each(vectors.phc)('reads the PHC string of "$password" as another library does', async (given) => {
    expect(await verify(given.encoded, given.password)).toBe(given.valid);
  });
});
