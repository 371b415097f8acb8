import { signatureOf } from '@libs/plant';
import vectors from './cases/standard-webhooks-vectors.json';

/** Standard Webhooks 1.0.0, scheme v1 (HMAC-SHA256); the project sends no v1a. */
const shared = vectors.computedHere.flatMap((vector) =>
  vector.scheme === 'v1' && vector.secret !== undefined ? [{ ...vector, secret: vector.secret }] : [],
);
const isSignedBy = (
  { secret, webhookId, webhookTimestamp, body, webhookSignature }: (typeof vectors)['published'],
  sign: typeof signatureOf,
): boolean =>
  webhookSignature.split(' ').includes(sign({ id: webhookId, timestamp: webhookTimestamp, body }, secret));

describe('a signature by Standard Webhooks 1.0.0', () => {
  it('comes out as the published sign test has it', () => {
    const { secret, webhookId: id, webhookTimestamp: timestamp, body, webhookSignature } = vectors.published;
    expect(signatureOf({ id, timestamp, body }, secret)).toBe(webhookSignature);
  });

  it.each(shared.map((vector) => [vector.why ?? vector.webhookId, vector] as const))(
    'agrees with the vector: %s',
    (_why, vector) => {
      expect(isSignedBy(vector, signatureOf)).toBe(vector.valid);
    },
  );
});
