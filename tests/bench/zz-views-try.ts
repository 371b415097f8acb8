import { openLedger } from '@libs/ledger/typeorm';
import { callersAsk, perSecond } from './bench';
import { scratch } from './scratch';
import { askingOf, CARD_TABLE, cardKeeper } from './work';
import { viewKeeper } from '@libs/views/typeorm';
import { VIEWS } from '@libs/views';
import { partOf } from '@libs/ledger';
const kind = { name: 'section', initial: { n: 0 }, decide: (c: any) => ({ ok: true, events: [c] }), evolve: (s: any) => ({ n: s.n + 1 }) };
const own = (n: number, size: number): any => {
  const a = askingOf('0001', n) as any;
  const serial = `S-2026-${1000 + (n % 60)}`;
  const base = JSON.parse(a.content).data;
  const phase = Math.floor(n / 60) % 12;
  const data = phase === 0
    ? { type: 'SectionMoved', data: { serial, from: `st${Math.floor(n / 720)}`, to: `st${Math.floor(n / 720) + 1}`, open: [], shortages: [], complete: true } }
    : phase === 5 ? { type: 'DefectRecorded', data: { serial, defect: `d${n}`, class: 'nonconformance', component: 'box', symptom: 'loose', place: null, foundAt: 'st1', operation: 'wired', charged: 'st1', photos: [], quantity: 1 } }
    : { type: 'WorkRecorded', data: { ...base, except: [], missing: [], late: false, photos: [], instrument: null }, revision: 12, planDigest: '9f64a747e1b97f131fabb6b447296c9b6f0201e79fb3c5356e6c77e89b6a806a' };
  return { ...a, parts: [partOf({ kind: kind as any, id: serial, command: data as any, facts: () => null as any })] };
};
const run = async (name: string, keepers: any[], callers: number, ask: any) => {
  const files = scratch(); let now = 1e12;
  const ledger = await openLedger({ at: { file: files.file() }, name: 'B', clock: () => (now += 1), secret: Buffer.alloc(32, 1), keepers });
  await ledger.transaction((sql) => sql.query(CARD_TABLE));
  const size = 20000;
  const rate = await perSecond(size, () => callersAsk(callers, size, async (n) => { const o = await ledger.ask(ask(n, size)); if (!o.ok) throw new Error('x'); }));
  console.log(name, callers, Math.round(rate));
  await ledger.close(); await files.clear();
};
(async () => {
  for (let i = 0; i < 3; i++) for (const c of [64, 256]) {
    await run('none', [], c, own);
    await run('card', [cardKeeper()], c, own);
    await run('views', [viewKeeper(VIEWS)], c, own);
  }
})();
