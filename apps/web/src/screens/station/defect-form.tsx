import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import type { PlantFacts } from '../../session/session';
import { alike } from '../../scan/alike';
import { TroubleNotice } from '../../ui/trouble';
import { capital, named } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { Both } from '../../words/words';
import { useDraft } from './drafts';
import { PanelHead } from './panel-head';
import { PhotoEntry } from '../../ui/photo-entry';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type Named = { readonly id: string; readonly name: Both };
const CLASSES = ['nonconformance', 'punch', 'shortage'] as const;
const CLASS_WORDS = {
  nonconformance: 'class.nonconformance',
  punch: 'class.punch',
  shortage: 'class.shortage',
} as const;
/** As many as fit on a phone without scrolling; the rest is one tap away. */
const FIRST = 12;

/** What this station's operations are known to cause comes first. */
const componentsFirst = (plant: PlantFacts, operations: ReadonlySet<string>): readonly Named[] => {
  const likely = new Set(
    plant.faults
      .filter((fault) => fault.operations.some((id) => operations.has(id)))
      .map((fault) => fault.component),
  );
  return [...plant.components].sort(
    (one, other) => Number(likely.has(other.id)) - Number(likely.has(one.id)),
  );
};
const symptomsFirst = (plant: PlantFacts, component: string): readonly Named[] => {
  const known = new Set(
    plant.faults.filter((fault) => fault.component === component).map((fault) => fault.symptom),
  );
  return [...plant.symptoms].sort((one, other) => Number(known.has(other.id)) - Number(known.has(one.id)));
};

type PickProps = {
  readonly step: string;
  readonly from: readonly Named[];
  readonly pick: (id: string) => void;
  readonly busy?: boolean;
};
const Pick = ({ step, from, pick, busy = false }: PickProps): ReactNode => {
  const { t, say, locale } = useSpeech();
  const [all, setAll] = useState(false);
  const [sought, setSought] = useState('');
  const near = alike(sought, from);
  const shown = all ? near : near.slice(0, FIRST);
  return (
    <fieldset className="stack tight settle">
      <legend className="field-name">{step}</legend>
      {from.length > FIRST && (
        <input
          className="input"
          type="search"
          value={sought}
          aria-label={t('defect.search')}
          placeholder={t('defect.search')}
          onChange={(event) => setSought(event.target.value)}
        />
      )}
      {near.length === 0 && <p className="quiet">{t('defect.none-alike')}</p>}
      <div className="tiles">
        {shown.map((one) => (
          <button
            key={one.id}
            type="button"
            className="button tile"
            disabled={busy}
            onClick={() => pick(one.id)}
          >
            {capital(say(one.name), locale)}
          </button>
        ))}
        {shown.length < near.length && (
          <button type="button" className="button plain tile" onClick={() => setAll(true)}>
            {t('defect.more', { count: near.length - shown.length })}
          </button>
        )}
      </div>
    </fieldset>
  );
};

const SEVERITIES = ['minor', 'major', 'critical'] as const;
const SEVERITY_WORDS = {
  minor: 'severity.minor',
  major: 'severity.major',
  critical: 'severity.critical',
} as const;

type Kind = {
  readonly class: (typeof CLASSES)[number];
  readonly hold: boolean;
  readonly severity: (typeof SEVERITIES)[number] | null;
};
const KindChoice = ({
  kind,
  change,
}: {
  readonly kind: Kind;
  readonly change: (kind: Kind) => void;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="choices">
      {CLASSES.map((name) => (
        <button
          key={name}
          type="button"
          className="button choice"
          aria-pressed={kind.class === name}
          onClick={() => change({ ...kind, class: name })}
        >
          {t(CLASS_WORDS[name])}
        </button>
      ))}
      <button
        type="button"
        className="button choice"
        aria-pressed={kind.hold}
        onClick={() => change({ ...kind, hold: !kind.hold })}
      >
        {t('defect.hold')}
      </button>
      {kind.class === 'nonconformance' &&
        SEVERITIES.map((severity) => (
          <button
            key={severity}
            type="button"
            className="button choice"
            aria-pressed={kind.severity === severity}
            onClick={() => change({ ...kind, severity: kind.severity === severity ? null : severity })}
          >
            {t(SEVERITY_WORDS[severity])}
          </button>
        ))}
    </div>
  );
};

/** What the plant's own fault map takes for the cause, and which station that charges; the quality manager may change it. */
const Likely = ({
  component,
  symptom,
}: {
  readonly component: string;
  readonly symptom: string;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const fault = plant.faults.find((one) => one.component === component && one.symptom === symptom);
  const likely = plant.operations.find(({ id }) => id === fault?.operations[0]);
  if (likely === undefined) return null;
  return (
    <p className="quiet">
      {t('defect.likely', {
        operation: say(likely.name),
        station: say(named(plant.stations, likely.station)),
      })}
    </p>
  );
};

type DefectDraft = {
  readonly kind: Kind;
  readonly component: string | null;
  readonly symptom: string | null;
  readonly photos: readonly string[];
};
const EMPTY: DefectDraft = {
  kind: { class: 'nonconformance', hold: false, severity: null },
  component: null,
  symptom: null,
  photos: [],
};

/** Three taps: what, what is the matter, where. The third one records it; undo stands beside the answer. */
export const DefectForm = (): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const { plant } = useSignedIn();
  const telling = useTelling();
  const { draft, change, forget } = useDraft<DefectDraft>(`${section.serial}/${station.id}/defect`, EMPTY);
  const { kind, component, symptom, photos } = draft;
  const setKind = (kind: Kind): void => change({ kind });
  const setComponent = (component: string | null): void => change({ component });
  const setSymptom = (symptom: string | null): void => change({ symptom });
  const setPhotos = (photos: readonly string[]): void => change({ photos });
  const nameOf = (from: readonly Named[], id: string): string => say(named(from, id));

  const record = async (place: string | null): Promise<void> => {
    if (component === null || symptom === null) return;
    const body = {
      serial: section.serial,
      class: kind.class,
      hold: kind.hold,
      ...(kind.severity === null || kind.class !== 'nonconformance' ? {} : { severity: kind.severity }),
      photos: [...photos],
      component,
      symptom,
      place,
      foundAt: station.id,
      station: station.id,
    };
    const result = await telling.send('defect', body);
    if (result !== 'turned-down') forget();
    const says = t('told.defect', {
      component: nameOf(plant.components, component),
      symptom: nameOf(plant.symptoms, symptom),
    });
    told(result, says, { undo: { defectsBefore: section.defects.map(({ defect }) => defect) } });
  };
  const here = new Set(section.operations.map((card) => card.operation));
  return (
    <section className="stack">
      <PanelHead title={t('defect.title')} close={close} />
      <KindChoice kind={kind} change={setKind} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      {component !== null && (
        <button
          type="button"
          className="button"
          onClick={() => (symptom === null ? setComponent(null) : setSymptom(null))}
        >
          {t('defect.so-far', {
            component: nameOf(plant.components, component),
            symptom: symptom === null ? '' : nameOf(plant.symptoms, symptom),
          })}
        </button>
      )}
      {component === null && (
        <Pick
          key="component"
          step={t('defect.component')}
          from={componentsFirst(plant, here)}
          pick={setComponent}
        />
      )}
      {component !== null && symptom === null && (
        <Pick
          key="symptom"
          step={t('defect.symptom')}
          from={symptomsFirst(plant, component)}
          pick={setSymptom}
        />
      )}
      {component !== null && symptom !== null && (
        <>
          <Likely component={component} symptom={symptom} />
          <PhotoEntry photos={photos} needed={false} change={setPhotos} />
          <Pick
            key="place"
            step={t('defect.place')}
            from={plant.places}
            pick={(place) => void record(place)}
            busy={telling.busy}
          />
          <button type="button" className="button" disabled={telling.busy} onClick={() => void record(null)}>
            {t('defect.no-place')}
          </button>
        </>
      )}
    </section>
  );
};
