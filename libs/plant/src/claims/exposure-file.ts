import { DELIVERY } from '@libs/record';
import type { Asked } from '../questions/asked';
import { exposureQuestion } from './tracing';

export type ExposureWish = {
  readonly claim: string;
  readonly cause: string;
  readonly method: 'exact' | 'whole-group';
};

/** The exposed homes with the addresses of who lives there, as CSV (RFC 4180); undefined: no such cause is known. */
export const exposureFile =
  (asked: Asked) =>
  async ({ claim, cause, method }: ExposureWish): Promise<string | undefined> => {
    const exposure = await exposureQuestion(asked)(claim, cause, method);
    if (exposure === undefined) return undefined;
    const rows: (readonly string[])[] = [HEADER];
    for (const { home, where, reasonSays, sections } of exposure.homes) {
      const delivery = await asked.ledger.state(DELIVERY, home);
      const sealed = delivery?.address;
      const place = { stream: `${DELIVERY.name}/${home}`, field: 'address' };
      const address = sealed === undefined ? '' : (asked.unsealed(sealed, place) ?? '');
      const { retailer, installer, occupiedOn } = delivery ?? {};
      rows.push([
        home,
        sections.join(' '),
        where,
        reasonSays.en,
        retailer ?? '',
        installer ?? '',
        occupiedOn ?? '',
        address,
      ]);
    }
    return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
  };

const HEADER = ['home', 'sections', 'where', 'reason', 'retailer', 'installer', 'occupied', 'address'];

/** Quoted where it must be; a leading sign that a spreadsheet would take for a formula is held back by a quote mark. */
const cell = (text: string): string => {
  const plain = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};
