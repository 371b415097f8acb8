import { ROUTES } from '@libs/contracts';
import { OFFICE_PATHS } from '../../apps/web/src/api/office-paths';
import { addressOf, PATHS } from '../../apps/web/src/api/paths';
import { addressOfPhoto, PHOTOS } from '../../apps/web/src/api/photo-address';
import { hereAndNow, newKey } from '../../apps/web/src/api/key';
import { placeOf, places } from '../../apps/web/src/router/places';

const routes: Readonly<Record<string, { readonly method: string; readonly path: string }>> = ROUTES;

describe('the paths the screens call', () => {
  it.each(Object.entries({ ...PATHS, ...OFFICE_PATHS }))(
    '%s is a route of the contract, %s',
    (name, path) => {
      expect(path).toBe(`${routes[name]?.method ?? ''} ${routes[name]?.path ?? ''}`);
    },
  );

  it('of photos are the contract’s too', () => {
    expect(PHOTOS).toBe(ROUTES.photo.path);
    expect(addressOfPhoto('f00d')).toBe(ROUTES.photoBytes.path.replace('{photo}', 'f00d'));
  });

  it('put what the path names into it and the rest behind it, and leave out what is not known', () => {
    expect(addressOf('section', { serial: 'A/1', at: 'rough-in' }).path).toBe(
      '/api/sections/A%2F1?at=rough-in',
    );
    expect(addressOf('yield', { by: 'station', from: null, to: '' }).path).toBe('/api/yield?by=station');
  });
});

describe('an idempotency key', () => {
  it('is a UUID of version 7 that begins with its time (RFC 9562 section 5.7)', () => {
    const key = newKey(0x0_17f_22e_279_b0);
    expect(key).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    // The time of the worked example in RFC 9562 appendix A.6: 017F22E2-79B0.
    expect(key.slice(0, 13)).toBe('017f22e2-79b0');
  });

  it('differs each time', () => {
    expect(new Set(Array.from({ length: 200 }, () => newKey())).size).toBe(200);
  });
});

describe('the time an entry says it happened', () => {
  it('is the same instant, written with the offset of the device', () => {
    const now = new Date('2026-03-14T14:26:53.123Z');
    const written = hereAndNow(now);
    expect(written).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.123[+-]\d\d:\d\d$/);
    expect(Date.parse(written)).toBe(now.getTime());
  });
});

describe('the addresses of the screens', () => {
  it.each([
    [places.start, { screen: 'start' }],
    [places.line, { screen: 'line' }],
    [places.station('rough-in'), { screen: 'station', station: 'rough-in', serial: null }],
    [places.sectionAt('rough-in', 'T 1/2'), { screen: 'station', station: 'rough-in', serial: 'T 1/2' }],
    [places.home('H-1'), { screen: 'home', serial: 'H-1' }],
    [places.homes, { screen: 'home', serial: null }],
    ['/home/%', { screen: 'home', serial: '%' }],
    ['/station/%E0%A4%A', { screen: 'station', station: '%E0%A4%A', serial: null }],
    ['/station/rough-in/T-1/extra', { screen: 'unknown' }],
    ['/nothing/here', { screen: 'unknown' }],
  ])('%s is read as it was written', (path, place) => {
    expect(placeOf(path)).toStrictEqual(place);
  });
});
