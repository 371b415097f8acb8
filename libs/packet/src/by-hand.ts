import type { PacketFile } from './packet-home';

/** How to check a packet with nothing but a hash program and an Ed25519 verifier. */
export const byHandFile = (home: string, position: number, digest: string): PacketFile => ({
  name: 'README.txt',
  bytes: Buffer.from(TEXT(home, position, digest), 'utf8'),
});

const TEXT = (home: string, position: number, digest: string): string => `Packet of home ${home}
==================${'='.repeat(home.length)}

report.pdf, expediente.pdf   the record, to be read and printed (English, Spanish)
csv/                         the same as tables; for reading, not for proving
history.epcis.json           the same as EPCIS 2.0 (ISO/IEC 19987)
history.xes                  the same as an event log (XES, IEEE 1849-2016)
evidence/                    what is proven: the events as they were recorded, and the proofs

Everything recorded up to position ${position} of the plant's ledger is taken into account.
SHA-256 of evidence/manifest.json: ${digest}

With Studbook
-------------
  studbook verify THIS_FILE.zip
or open the page /verify of any Studbook in a browser and give it this file. It needs no server.

By hand
-------
1. The files. evidence/manifest.json lists every file of the evidence with its SHA-256. Hash each file and compare.
2. Each event. evidence/events.jsonl has one event a line, as RFC 8785 JSON. The leaf of an event is the SHA-256 of
   one zero byte followed by the bytes of its line (without the line's end).
3. Each event is in the ledger. The lines of evidence/inclusion.jsonl lead from a leaf to the root of a tree (RFC 9162, section 2.1.3): a node is
   the SHA-256 of one byte 01, the left hash and the right hash. The last root must be the one in the checkpoint.
4. Nothing is missing. Versions of each stream go from 1 up without a gap, and the last of each is in evidence/streams.jsonl,
   from where hashes lead to a second root that the checkpoint signs too.
5. The signature. evidence/checkpoint.txt is a signed note (C2SP): Ed25519 over the text above the empty line. The
   public key is in evidence/key.txt; compare it with the one the plant has published, not only with the one in here.
6. An earlier checkpoint. If you hold one, the consistency proof shows that the ledger it was made of is the beginning
   of this one: nothing that stood in it then was changed since.

Follow the approved design, the quality assurance manual, the inspection agencies and local codes; this record does
not replace them.
`;
