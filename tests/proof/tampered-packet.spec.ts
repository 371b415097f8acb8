import {
  CONSISTENCY,
  allProven,
  linesOf,
  packedFiles,
  readEvidenceManifest,
  sealedPacket,
  unpackedFiles,
  utf8,
  verifyPacked,
  verifyPacket,
} from '@libs/proof';
import type { Outcome, PacketFiles } from '@libs/proof';
import fc from 'fast-check';
import { PAPER_SIGNER, checkpointOf, paperEvents, paperPacket } from '../support/paper-ledger';
import { HASHING, TOOLS, sha256, signerFrom } from '../support/proof-tools';

/**
 * Goal: whatever is done to a packet, it is found out, and what was done is named.
 * Method: a real packet of 32 events out of 48, and 1 000 random edits of each kind. The forger also knows how to make
 * the manifests anew, so that hashes of files alone would show nothing. fast-check prints the seed of a failure.
 */
const RUNS = { numRuns: 1_000 };
const ALL = paperEvents(48);
const { files: GOOD, own: OWN } = paperPacket(ALL);
const EVENTS = 'evidence/events.jsonl';
const PROOFS = 'evidence/inclusion.jsonl';

const failures = (outcomes: readonly Outcome[]): readonly Outcome[] =>
  outcomes.filter(({ is }) => is === 'failed');
const named = (outcomes: readonly Outcome[]): readonly string[] =>
  failures(outcomes).map(({ code, place: { stream, version, line } }) =>
    [code, stream, version, line].filter((part) => part !== undefined).join(' '),
  );

const withLines = (
  files: PacketFiles,
  name: string,
  change: (lines: Uint8Array[]) => Uint8Array[],
): PacketFiles => {
  const lines = change([...linesOf(files.get(name)!)]);
  return new Map([...files, [name, Buffer.concat(lines.flatMap((line) => [line, utf8('\n')]))]]);
};

/** A forger without the plant's key makes all lists anew; the seal they cannot. */
const relisted = (files: PacketFiles): PacketFiles => {
  const manifest = readEvidenceManifest(files.get('evidence/manifest.json')!)!;
  const listed = manifest.files.map(({ name }) => {
    const bytes = files.get(`evidence/${name}`)!;
    return { name, bytes: bytes.length, sha256: Buffer.from(sha256(bytes)).toString('hex') };
  });
  const events = linesOf(files.get(EVENTS)!).length;
  const evidence = utf8(`${JSON.stringify({ ...manifest, events, files: listed }, null, 2)}\n`);
  const content = [...files].filter(([name]) => !name.startsWith('manifest.'));
  const forged = new Map([...content, ['evidence/manifest.json', evidence] as const]);
  const sealed = sealedPacket({ sha256, signer: PAPER_SIGNER }, manifest.position, forged);
  return new Map([...sealed, ['manifest.note', GOOD.get('manifest.note')!]]);
};

const nth = fc.nat(OWN.length - 1);
const at = (n: number): string => `${OWN[n]!.stream} ${OWN[n]!.version}`;

describe('a packet as the plant made it', () => {
  it('is proven in every point, as files and as one ZIP', () => {
    expect(named(verifyPacket(GOOD, TOOLS))).toStrictEqual([]);
    expect(allProven(verifyPacked(packedFiles(GOOD), TOOLS))).toBe(true);
    expect([...unpackedFiles(packedFiles(GOOD))!.files.keys()]).toStrictEqual([...GOOD.keys()]);
  });

  it('extends the checkpoint somebody holds, and that of another ledger it does not', () => {
    const held = checkpointOf(ALL.slice(0, 5));
    const other = checkpointOf(paperEvents(7).slice(2));

    expect(named(verifyPacket(GOOD, TOOLS, { checkpoint: held }))).toStrictEqual([]);
    expect(named(verifyPacket(GOOD, TOOLS, { checkpoint: other }))).toStrictEqual(['held-contradicted']);
    expect(named(verifyPacket(GOOD, TOOLS, { checkpoint: checkpointOf(ALL.slice(0, 6)) }))).toStrictEqual([
      'held-unbridged',
    ]);
  });
});

describe('in a tampered packet is found and named', () => {
  it('one flipped bit anywhere in the ZIP', () => {
    const zip = packedFiles(GOOD);
    fc.assert(
      fc.property(fc.nat(zip.length * 8 - 1), (bit) => {
        const forged = zip.slice();
        forged[bit >> 3]! ^= 1 << (bit & 7);

        const outcomes = failures(verifyPacked(forged, TOOLS));

        const inFile = [...GOOD].find(([, bytes]) => isWithin(zip, bytes, bit >> 3))?.[0];
        expect(outcomes.map(({ place }) => place.file)).toContain(inFile);
      }),
      RUNS,
    );
  });

  it('one flipped bit of an event, whoever makes the lists anew', () => {
    fc.assert(
      fc.property(nth, fc.nat(), (n, bit) => {
        const forged = relisted(
          withLines(GOOD, EVENTS, (lines) => lines.map((line, m) => (m === n ? flippedIn(line, bit) : line))),
        );

        expect(named(verifyPacket(forged, TOOLS))).toContain(`event-altered ${at(n)} ${n + 1}`);
      }),
      RUNS,
    );
  });

  it('a dropped event, with and without its proof', () => {
    fc.assert(
      fc.property(nth, fc.boolean(), (n, withProof) => {
        const less = (lines: Uint8Array[]) => lines.toSpliced(n, 1);
        const dropped = withLines(GOOD, EVENTS, less);
        const forged = relisted(withProof ? withLines(dropped, PROOFS, less) : dropped);

        expect(named(verifyPacket(forged, TOOLS))).toContain(`event-dropped ${at(n)}`);
      }),
      RUNS,
    );
  });

  it('an added event: a made-up one, and one there already', () => {
    fc.assert(
      fc.property(nth, nth, fc.boolean(), (n, from, isCopy) => {
        const { body, stream, version } = OWN[from]!;
        const made = isCopy
          ? body
          : utf8(Buffer.from(body).toString().replace('"data":{', '"data":{"more":1,'));
        const forged = relisted(withLines(GOOD, EVENTS, (lines) => lines.toSpliced(n, 0, made)));

        const outcomes = named(verifyPacket(forged, TOOLS));

        const found = outcomes.some(
          (one) =>
            one.startsWith(isCopy ? 'event-repeated' : 'event-added') && one.includes(`${stream} ${version}`),
        );
        expect(found).toBe(true);
      }),
      RUNS,
    );
  });

  it('two events that changed places', () => {
    fc.assert(
      fc.property(nth, nth, (n, m) => {
        fc.pre(n !== m);
        const forged = relisted(
          withLines(GOOD, EVENTS, (lines) => lines.with(n, lines[m]!).with(m, lines[n]!)),
        );

        expect(named(verifyPacket(forged, TOOLS))).toStrictEqual(
          expect.arrayContaining([
            `event-out-of-order ${at(m)} ${n + 1}`,
            `event-out-of-order ${at(n)} ${m + 1}`,
          ]),
        );
      }),
      RUNS,
    );
  });

  it('an event in the place of another, with its own true proof', () => {
    const others = ALL.filter(({ position }) => !OWN.some((own) => own.position === position));
    const { files: whole } = paperPacket(ALL.map((event) => event));
    expect([...whole.keys()]).toStrictEqual([...GOOD.keys()]);
    fc.assert(
      fc.property(nth, fc.nat(others.length - 1), (n, m) => {
        const other = others[m]!;
        const forged = relisted(
          withLines(GOOD, EVENTS, (lines) => lines.map((line, k) => (k === n ? other.body : line))),
        );

        expect(named(verifyPacket(forged, TOOLS))).toContain(`event-swapped ${at(n)} ${n + 1}`);
      }),
      RUNS,
    );
  });

  it('a foreign key: the packet signed anew by a forger, to whoever holds a checkpoint or the key', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), fc.nat(ALL.length - 1), (secret, n) => {
        const forger = signerFrom(PAPER_SIGNER.key.name, secret);
        const less = ALL.filter((_, m) => m !== n);
        const { files } = paperPacket(less, { signer: forger });
        const held = checkpointOf(ALL.slice(0, 5));

        const bare = new Map([...files, ['evidence/key.txt', GOOD.get('evidence/key.txt')!]]);
        expect(named(verifyPacket(files, TOOLS, { checkpoint: held }))).toContain('key-foreign');
        expect(named(verifyPacket(bare, TOOLS))).toContain('key-foreign');
      }),
      { numRuns: 250 },
    );
  });

  it('any file cut short, lengthened or gone', () => {
    const names = [...GOOD.keys()].filter(
      (name) => !name.startsWith('manifest.') && name !== 'evidence/manifest.json',
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(),
        fc.constantFrom('short', 'long', 'gone'),
        (name, by, how) => {
          const bytes = GOOD.get(name)!;
          const cut = how === 'short' ? bytes.slice(0, by % bytes.length) : Buffer.concat([bytes, utf8('x')]);
          const forged = new Map([...GOOD, [name, cut]]);
          if (how === 'gone') forged.delete(name);
          const code = { short: 'file-cut-short', long: 'file-lengthened', gone: 'file-missing' }[how];

          const outcomes = failures(verifyPacket(forged, TOOLS));

          expect(outcomes.map(({ code: one, place }) => `${one} ${place.file ?? ''}`)).toContain(
            `${code} ${name}`,
          );
        },
      ),
      RUNS,
    );
  });

  it('a ZIP cut short anywhere', () => {
    const zip = packedFiles(GOOD);
    fc.assert(
      fc.property(fc.nat(zip.length - 1), (length) => {
        expect(failures(verifyPacked(zip.slice(0, length), TOOLS)).length).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it('a page beside the evidence that is not the plant’s, and a list nobody signed', () => {
    const page = new Map([...GOOD, ['page.txt', utf8('What this home is not, for people.')]]);

    expect(named(verifyPacket(page, TOOLS))).toStrictEqual(['file-lengthened']);
    expect(failures(verifyPacket(relisted(page), TOOLS))).toMatchObject([
      { code: 'file-altered', place: { file: 'manifest.json' } },
    ]);
    const unlisted = new Map([...GOOD].filter(([name]) => !name.startsWith('manifest.')));
    expect(named(verifyPacket(unlisted, TOOLS))).toStrictEqual(['file-missing']);
  });

  it('a whole stream left out of all files and lists', () => {
    const without = OWN.filter(({ stream }) => stream !== 'section/H1-B');
    const isHere = (line: Uint8Array) => !Buffer.from(line).includes('"section/H1-B"');
    const forged = [EVENTS, PROOFS, 'evidence/streams.jsonl'].reduce(
      (files, name) => withLines(files, name, (lines) => lines.filter(isHere)),
      GOOD,
    );
    const manifest = readEvidenceManifest(forged.get('evidence/manifest.json')!)!;
    const streams = manifest.streams.filter((stream) => stream !== 'section/H1-B');
    const listed = relisted(
      new Map([...forged, ['evidence/manifest.json', utf8(JSON.stringify({ ...manifest, streams }))]]),
    );

    expect(without.length).toBeLessThan(OWN.length);
    expect(named(verifyPacket(listed, TOOLS))).toContain('stream-missing section/H1-B');
  });

  it('a bridge that leads elsewhere', () => {
    const wrong = withLines(GOOD, CONSISTENCY, (lines) =>
      lines.map((line) => utf8(Buffer.from(line).toString().replace('"path":["', '"path":["A'))),
    );
    const held = checkpointOf(ALL.slice(0, 5));
    const hash = Buffer.from(HASHING.leaf(utf8('x'))).toString('base64');
    const made = utf8(`{"from":5,"path":["${hash}"],"to":${ALL.length}}\n`);

    expect(named(verifyPacket(wrong, TOOLS, { checkpoint: held }))).toContain('held-unbridged');
    expect(
      named(verifyPacket(new Map([...GOOD, [CONSISTENCY, made]]), TOOLS, { checkpoint: held })),
    ).toContain('held-contradicted');
  });
});

/** A newline would make two lines of one, which is named otherwise. */
const flippedIn = (line: Uint8Array, bit: number): Uint8Array => {
  const changed = line.slice();
  const index = Math.floor(bit / 8) % line.length;
  changed[index]! ^= 1 << (bit % 8);
  return changed[index] === 0x0a ? flippedIn(line, bit + 1) : changed;
};

/** Where in the ZIP a file's own bytes lie: stored as they are. */
const isWithin = (zip: Uint8Array, bytes: Uint8Array, index: number): boolean => {
  const start = Buffer.from(zip).indexOf(bytes);
  return index >= start && index < start + bytes.length;
};
