import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as argon2 from 'argon2';

const vectors = JSON.parse(
  readFileSync(join(__dirname, 'cases', 'argon2id-vectors.json'), 'utf8'),
) as Vectors;
type Vectors = {
  readonly rfc9106: { readonly [field: string]: number } & {
    readonly passwordHex: string;
    readonly saltHex: string;
    readonly secretHex: string;
    readonly associatedDataHex: string;
    readonly tagHex: string;
  };
  readonly phc: readonly { readonly password: string; readonly encoded: string; readonly valid: boolean }[];
};

const bytes = (hex: string): Buffer => Buffer.from(hex, 'hex');

describe('the hash that PINs and passwords are kept as', () => {
  it('is Argon2id: RFC 9106, section 5.3', async () => {
    const { rfc9106: given } = vectors;
    const tag = await argon2.hash(bytes(given.passwordHex), {
      type: argon2.argon2id,
      version: given.version,
      memoryCost: given.memoryKiB,
      timeCost: given.passes,
      parallelism: given.parallelism,
      hashLength: given.tagLength,
      salt: bytes(given.saltHex),
      secret: bytes(given.secretHex),
      associatedData: bytes(given.associatedDataHex),
      raw: true,
    });
    expect(tag.toString('hex')).toBe(given.tagHex);
  });

  it.each(vectors.phc)('reads the PHC string of "$password" as another library does', async (given) => {
    expect(await argon2.verify(given.encoded, given.password)).toBe(given.valid);
  });
});
