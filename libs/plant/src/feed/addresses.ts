import { lookup as resolve } from 'node:dns';
import type { LookupAddress } from 'node:dns';
import { BlockList, isIP } from 'node:net';
import type { LookupFunction } from 'node:net';

/**
 * Where a subscriber's address may not lead: to this machine, the plant's own network and what is beside it. Otherwise
 * whoever may subscribe could have this server post to what only this server reaches. IANA special-purpose registries
 * (RFC 6890 and its updates).
 */
const OWN_V4 = [
  ...['0.0.0.0/8', '10.0.0.0/8', '100.64.0.0/10', '127.0.0.0/8', '169.254.0.0/16', '172.16.0.0/12'],
  ...['192.0.0.0/24', '192.0.2.0/24', '192.168.0.0/16', '198.18.0.0/15', '198.51.100.0/24', '203.0.113.0/24'],
  ...['224.0.0.0/4', '240.0.0.0/4'],
];
const OWN_V6 = [
  ...['::/128', '::1/128', '64:ff9b::/96', '64:ff9b:1::/48', '100::/64', '2001::/23', '2001:db8::/32'],
  ...['2002::/16', 'fc00::/7', 'fe80::/10', 'fec0::/10', 'ff00::/8'],
];

/** Addresses in the form `10.20.0.0/16`; a bad one is thrown where the settings are read. */
const listOf = (networks: readonly string[]): BlockList => {
  const list = new BlockList();
  for (const network of networks) {
    const [address = '', bits] = network.split('/');
    const family = isIP(address) === 6 ? 'ipv6' : 'ipv4';
    if (bits === undefined) list.addAddress(address, family);
    else list.addSubnet(address, Number(bits), family);
  }
  return list;
};

const OWN = listOf([...OWN_V4, ...OWN_V6]);
/** `::ffff:10.0.0.1` is 10.0.0.1 in other clothes. */
const MAPPED = /^::ffff:(?:(\d+\.\d+\.\d+\.\d+)|([0-9a-f]{1,4}):([0-9a-f]{1,4}))$/i;

const unmapped = (address: string): string => {
  const [, dotted, high, low] = MAPPED.exec(address) ?? [];
  if (dotted !== undefined) return dotted;
  if (high === undefined || low === undefined) return address;
  const [upper, lower] = [Number.parseInt(high, 16), Number.parseInt(low, 16)];
  return [upper >> 8, upper & 255, lower >> 8, lower & 255].join('.');
};

export class AddressForbidden extends Error {
  constructor(readonly host: string) {
    super(`${host} is in this server's own network, which the administrator has not opened to the feed`);
  }
}

export type Reach = {
  /** Of an address, whether it may be posted to at all. */
  readonly mayReach: (address: string) => boolean;
  /** Whether it was opened by name: only there may a subscriber do without TLS. */
  readonly isOpened: (address: string) => boolean;
  /** For a socket: resolves a name, and refuses it where any of its addresses is forbidden. */
  readonly lookup: LookupFunction;
};

/** `opened`: networks of the plant's own that the administrator lets the feed post to. */
export const reachWith = (opened: readonly string[]): Reach => {
  const open = listOf(opened);
  const within = (list: BlockList, given: string): boolean => {
    const address = unmapped(given);
    return list.check(address, isIP(address) === 6 ? 'ipv6' : 'ipv4');
  };
  const isOpened = (address: string): boolean => within(open, address);
  const mayReach = (address: string): boolean => isOpened(address) || !within(OWN, address);
  return {
    mayReach,
    isOpened,
    // The socket connects to what was looked at here: a name that resolves otherwise a moment later gains nothing.
    lookup: (host, options, callback) => {
      resolve(host, { ...options, all: true }, (error, found) => {
        const addresses: readonly LookupAddress[] = error === null ? found : [];
        const forbidden = addresses.find(({ address }) => !mayReach(address));
        const fault = error ?? (forbidden === undefined ? null : new AddressForbidden(host));
        const [first] = addresses;
        if (fault !== null || first === undefined) callback(fault ?? new AddressForbidden(host), '', 4);
        else if (options.all === true) callback(null, [...addresses]);
        else callback(null, first.address, first.family);
      });
    },
  };
};

export const isNetwork = (text: string): boolean => {
  const [address = '', bits, more] = text.split('/');
  const family = isIP(address);
  if (family === 0 || more !== undefined) return false;
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= (family === 6 ? 128 : 32));
};
