import { idempotencyKey } from '../../apps/server/src/http/idempotency-key';

/** draft-ietf-httpapi-idempotency-key-header, section 2: the value is a structured-field string (RFC 9651, 3.3.3). */
describe('the Idempotency-Key header', () => {
  it.each([
    [
      '"8e03978e-40d5-43e8-bc93-6894a57f9324"',
      '8e03978e-40d5-43e8-bc93-6894a57f9324',
      'the draft’s own example',
    ],
    [
      '8e03978e-40d5-43e8-bc93-6894a57f9324',
      '8e03978e-40d5-43e8-bc93-6894a57f9324',
      'the same without quotes',
    ],
    [String.raw`"a\"b\\c"`, String.raw`a"b\c`, 'escapes'],
    ['"with a blank"', 'with a blank', 'a blank inside quotes'],
  ])('%s is read as %s (%s)', (header, key) => {
    expect(idempotencyKey(header)).toBe(key);
  });

  it.each<readonly [string | string[] | undefined, string]>([
    [undefined, 'missing'],
    ['', 'missing'],
    ['""', 'empty'],
    ['"a', 'no closing quote'],
    ['a b', 'a blank outside quotes'],
    ['"a", "b"', 'sent twice and joined'],
    [['a', 'b'], 'sent twice'],
    [String.raw`"a\b"`, 'an escape that is none'],
    ['"é"', 'not ASCII'],
    [`"${'k'.repeat(129)}"`, 'longer than 128'],
  ])('%j is refused, and the header named (%s)', (header) => {
    expect(() => idempotencyKey(header)).toThrow(
      expect.objectContaining({
        fields: expect.objectContaining({
          status: 400,
          errors: [expect.objectContaining({ pointer: '#/header/idempotency-key' })],
        }),
      }),
    );
  });
});
