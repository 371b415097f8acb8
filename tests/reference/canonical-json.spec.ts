import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { canonicalJson, hasCanonicalForm } from '@libs/kernel';
import type { JsonObject } from '@libs/kernel';
import vectors from './cases/rfc8785-vectors.json';

const parsed = (text: string): JsonObject => JSON.parse(text) as JsonObject;
const doubleOf = (hex: string): number => Buffer.from(hex, 'hex').readDoubleBE();

/** Any JSON object, names that engines treat oddly among them: numbers, and the name of the prototype. */
const anyName = fc.oneof(fc.string({ unit: 'binary' }), fc.nat(120).map(String), fc.constant('__proto__'));
const { object: anyObject } = fc.letrec<{ json: unknown; object: JsonObject }>((tie) => ({
  json: fc.oneof(
    { maxDepth: 4 },
    fc.constant(null),
    fc.boolean(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.string({ unit: 'binary' }),
    fc.array(tie('json'), { maxLength: 4 }),
    tie('object'),
  ),
  object: fc.dictionary(anyName, tie('json'), { maxKeys: 6 }).map((members) => members as JsonObject),
}));

describe('canonical JSON, RFC 8785', () => {
  it.each(vectors.documents)(
    'writes the test document "$name" of the RFC’s author byte for byte',
    (document) => {
      // Documents that are not objects stand inside one: the ledger stores objects only.
      const text = canonicalJson({ document: parsed(document.input) });

      const inside = text.slice('{"document":'.length, -1);
      expect(Buffer.from(inside).toString('hex')).toBe(document.canonicalUtf8Hex);
      expect(createHash('sha256').update(inside).digest('hex')).toBe(document.sha256);
    },
  );

  it.each(vectors.numbers)('writes number $ieee754Hex of RFC 8785 appendix B as $canonical', (number) => {
    expect(canonicalJson({ n: doubleOf(number.ieee754Hex) })).toBe(`{"n":${number.canonical}}`);
  });

  it.each(vectors.mustReject.numbers)('has no form for $value', ({ ieee754Hex }) => {
    expect(hasCanonicalForm({ list: [{ n: doubleOf(ieee754Hex) }] })).toBe(false);
  });

  it('has no form for half of a surrogate pair (RFC 8785 section 3.2.2.2), in text or name', () => {
    const [lone] = vectors.mustReject.strings;
    const half = JSON.parse(lone?.json ?? '') as string;

    expect(hasCanonicalForm({ note: ['a', half] })).toBe(false);
    expect(hasCanonicalForm({ [half]: 1 })).toBe(false);
    expect(hasCanonicalForm({ note: 'a whole pair: \u{1f600}', [`\u{1f600}`]: 1 })).toBe(true);
  });

  it('writes what the canonicalize package writes, whatever the object and the order of its members', () => {
    fc.assert(
      fc.property(anyObject, (object) => {
        fc.pre(hasCanonicalForm(object));
        expect(canonicalJson(object)).toBe(canonicalize(object));
        expect(canonicalJson(parsed(canonicalJson(object)))).toBe(canonicalJson(object));
      }),
      { numRuns: 500 },
    );
  });

  it('leaves members out that are undefined, at every depth', () => {
    expect(canonicalJson({ b: undefined, a: [{ z: undefined, y: 1 }], 10: undefined })).toBe(
      '{"a":[{"y":1}]}',
    );
  });

  it('keeps a member of the name __proto__, in any place', () => {
    const text = '{"__proto__":{"__proto__":[{"b":1,"a":2}],"a":1},"a":{"__proto__":1,"B":2}}';

    expect(canonicalJson(parsed(text))).toBe(canonicalize(parsed(text)));
  });
});
