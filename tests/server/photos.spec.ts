import { createHash } from 'node:crypto';
import { NOTE_TOOLS } from '@libs/ledger';
import { allProven, packedFiles, unpackedFiles, verifyPacked, verifyPacket } from '@libs/proof';
import request from 'supertest';
import { buildUpTo } from '../support/build-up';
import { phoneJpeg, picture } from '../support/pictures';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

const SERIAL = 'T-500A';

describe('a photo', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        await buildUpTo(plant, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
      },
    });
  });
  afterAll(() => server.clear());

  const send = async (bytes: Buffer, media = 'image/jpeg', by = 'lead'): Promise<request.Response> =>
    request(server.address)
      .post('/api/photos')
      .set('cookie', await server.session(by))
      .set('content-type', media)
      .send(bytes);
  const show = async (photo: string, by = 'auditor'): Promise<request.Response> =>
    request(server.address)
      .get(`/api/photos/${photo}`)
      .set('cookie', await server.session(by))
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      });

  it('is kept under its hash, shown to those who may, and named by the work and the packet', async () => {
    const answer = await send(phoneJpeg());
    const photo = String(answer.body.photo);
    expect(answer.status).toBe(201);
    expect(answer.body).toStrictEqual({ photo, type: 'image/jpeg', bytes: expect.any(Number) });

    const shown = await show(photo);
    expect(shown.headers['content-type']).toBe('image/jpeg');
    expect(createHash('sha256').update(shown.body).digest('hex')).toBe(photo);
    expect(shown.body.includes('Prairie Road')).toBe(false);

    await server
      .post('/api/work', { serial: SERIAL, operation: 'wire-protected', photos: [photo] })
      .expect(201);
    const entries = await server.eventsOf(SERIAL);
    expect(entries.find(({ data }) => JSON.stringify(data['photos'] ?? []).includes(photo))).toBeDefined();

    const zip = await packetOf();
    const { files } = unpackedFiles(zip)!;
    const name = `photos/${photo}.jpg`;
    expect(Buffer.from(files.get(name) ?? []).equals(shown.body)).toBe(true);
    expect(JSON.parse(Buffer.from(files.get('manifest.json') ?? []).toString()).files).toContainEqual({
      name,
      bytes: shown.body.length,
      sha256: photo,
    });
    const outcomes = verifyPacked(zip, NOTE_TOOLS);
    expect(allProven(outcomes)).toBe(true);
    expect(outcomes.map(({ code }) => code)).toContain('photos-named');

    // Whoever has the events alone can still tell a photo that is not the one they name.
    const swapped = new Map([...files].filter(([file]) => !file.startsWith('manifest')));
    swapped.set(name, new Uint8Array(picture('png')));
    expect(
      verifyPacket(swapped, NOTE_TOOLS).filter(
        ({ code, place }) => code === 'photo-other' && place.file === name,
      ),
    ).toHaveLength(1);
    const added = new Map([...files]).set(
      `photos/${hashOf(picture('webp'))}.webp`,
      new Uint8Array(picture('webp')),
    );
    expect(verifyPacked(packedFiles(added), NOTE_TOOLS).map(({ code }) => code)).toContain('file-unlisted');
  });

  const packetOf = async (): Promise<Uint8Array> => {
    const answer = await request(server.address)
      .get('/api/homes/T-500/packet')
      .set('cookie', await server.session('auditor'))
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      });
    return new Uint8Array(answer.body);
  };

  it.each([
    ['no picture', Buffer.from('hello'), 'image/png', 422, 'photo-not-a-picture'],
    ['cut short', picture('jpg').subarray(0, 400), 'image/jpeg', 422, 'photo-broken'],
    ['JSON', Buffer.from('{}'), 'application/json', 415, 'body-not-taken'],
    ['a page', Buffer.from('<p>'), 'text/html', 415, 'body-not-json'],
    ['larger than any camera makes', Buffer.alloc(16_777_217), 'image/jpeg', 413, 'body-too-large'],
  ])('is refused when it is %s', async (...given) => {
    const [, bytes, media, status, code] = given;
    const answer = await send(bytes, media);
    expect(answer.body).toMatchObject({ status, code });
    expect(answer.status).toBe(status);
  });

  it('is a body for photos only', async () => {
    const answer = await request(server.address)
      .post('/api/work')
      .set('cookie', await server.session('lead'))
      .set('content-type', 'image/png')
      .send(picture('png'));
    expect(answer.body).toMatchObject({ status: 415, code: 'body-not-json' });
  });

  it('is shown to nobody who has not signed in, nor taken from an auditor', async () => {
    const { photo } = (await send(picture('jpg'))).body as { photo: string };
    await request(server.address).get(`/api/photos/${photo}`).expect(401);
    expect((await send(picture('jpg'), 'image/jpeg', 'auditor')).status).toBe(403);
    expect((await show('0'.repeat(64))).status).toBe(404);
  });
});

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
