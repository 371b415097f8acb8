import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { mayFind, mayTell } from '../../session/may';
import { mayDecide, useSignedIn } from '../../session/session';
import type { Me } from '../../session/session';
import { useSpeech } from '../../words/words';
import type { SectionFacts } from './cards';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type Defect = SectionFacts['defects'][number];

const CLASS_WORDS = {
  nonconformance: 'class.nonconformance',
  punch: 'class.punch',
  shortage: 'class.shortage',
  record: 'class.record',
} as const;
const STATE_WORDS = { open: 'defect.open', reworked: 'defect.reworked', closed: 'defect.closed' } as const;

type Way = 'rework' | 'verify' | 'fitted' | 'signed' | 'withdraw';

/** What this person may do next with a defect of its class and state. */
const waysFor = (me: Me, { class: ofClass, state }: Defect): ReadonlySet<Way> => {
  const differs = ofClass === 'nonconformance';
  const offered: readonly (readonly [Way, boolean])[] = [
    ['rework', mayTell(me) && differs && state === 'open'],
    ['verify', mayFind(me) && differs && state === 'reworked'],
    ['fitted', mayTell(me) && ofClass === 'shortage'],
    ['signed', mayTell(me) && (ofClass === 'punch' || ofClass === 'record')],
    ['withdraw', mayDecide(me)],
  ];
  return new Set(offered.flatMap(([way, isOffered]) => (isOffered ? [way] : [])));
};

/** What may be done next with a defect: rework and verification for what differs from plan, one tap for the rest. */
const Ways = ({ defect }: { readonly defect: Defect }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, told } = useWork();
  const telling = useTelling();
  const ways = waysFor(useSignedIn().me, defect);
  const body = { serial: section.serial, station: station.id };
  const wanted = { defect: defect.defect };
  const says = say(defect.says);
  const rework = async (): Promise<void> =>
    told(await telling.send('rework', body, wanted), t('told.reworked', { defect: says }));
  const verify = async (accepted: boolean): Promise<void> =>
    told(
      await telling.send('verification', { ...body, accepted }, wanted),
      t(accepted ? 'told.verified' : 'told.not-accepted', { defect: says }),
    );
  const close = async (how: 'fitted' | 'signed' | 'withdrawn'): Promise<void> =>
    told(await telling.send('closing', { ...body, how }, wanted), t('told.closed', { defect: says }));
  const button = (word: string, act: () => Promise<void>): ReactNode => (
    <button key={word} type="button" className="button" disabled={telling.busy} onClick={() => void act()}>
      {word}
    </button>
  );
  return (
    <>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div className="choices">
        {ways.has('rework') && button(t('defect.rework'), rework)}
        {ways.has('verify') && [
          button(t('defect.accept'), () => verify(true)),
          button(t('defect.reject'), () => verify(false)),
        ]}
        {ways.has('fitted') && button(t('defect.fitted'), () => close('fitted'))}
        {ways.has('signed') && button(t('defect.signed'), () => close('signed'))}
        {ways.has('withdraw') && button(t('defect.withdraw'), () => close('withdrawn'))}
      </div>
    </>
  );
};

/** Twenty to forty items are one signature, not forty. */
const SignList = ({ punch }: { readonly punch: readonly Defect[] }): ReactNode => {
  const { t } = useSpeech();
  const { section, station, told } = useWork();
  const telling = useTelling();
  if (punch.length < 2) return null;
  const sign = async (): Promise<void> => {
    const body = { serial: section.serial, station: station.id };
    told(await telling.send('punchSignature', body), t('told.list-signed', { count: punch.length }));
  };
  return (
    <>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div>
        <button type="button" className="button" disabled={telling.busy} onClick={() => void sign()}>
          {t('defect.sign-list', { count: punch.length })}
        </button>
      </div>
    </>
  );
};

export const DefectList = ({ defects }: { readonly defects: readonly Defect[] }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const open = defects.filter(({ state }) => state !== 'closed');
  const placeOf = (id: string | null): string => {
    const place = plant.places.find((one) => one.id === id);
    return place === undefined ? '' : ` · ${say(place.name)}`;
  };
  if (open.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="defects">
      <h2 id="defects">{t('defects', { count: open.length })}</h2>
      <SignList punch={open.filter((defect) => defect.class === 'punch')} />
      <ul className="findings">
        {open.map((defect) => (
          <li key={defect.defect} className="finding">
            <Mark name={defect.state === 'reworked' ? 'open-at-places' : 'refused'} size={28} />
            <div className="grow stack tight">
              <p>
                {say(defect.says)}
                {placeOf(defect.place)}
              </p>
              <p className="quiet small">
                {t(CLASS_WORDS[defect.class])} · {t(STATE_WORDS[defect.state])}
              </p>
              <Ways defect={defect} />
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
};
