import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { askOrHere } from '../../api/or-here';
import type { Trouble } from '../../api/client';
import { TroubleNotice } from '../../ui/trouble';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { recordPanel } from './panel';
import type { Card } from './cards';
import { FindingList } from '../../ui/finding-list';
import { SourceSays } from '../../ui/source-says';
import { JudgedHere } from './judged-here';
import { PanelHead } from './panel-head';
import { useWork } from './work-context';

type Answer = AnswerOf<'asking'>;
type Finding = Answer['findings'][number];
type Props = { readonly card: Card; readonly answer: Answer };

/** Rules that miss the same work, and the hold it led to, are one thing to mend. A defect is its own. */
const byOperation = (findings: readonly Finding[]): readonly (readonly [Finding, ...Finding[]])[] => {
  const groups = new Map<string, [Finding, ...Finding[]]>();
  for (const finding of findings) {
    const key = finding.defect ?? finding.operation;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  return [...groups.values()];
};

type MissingProps = {
  readonly findings: readonly [Finding, ...Finding[]];
  readonly then: Card;
  readonly first: boolean;
};
/** Goes straight to recording what is missing, even when it was due at another station. */
const RecordMissing = ({ findings: [finding], then, first }: MissingProps): ReactNode => {
  const { t, say } = useSpeech();
  const { section, show } = useWork();
  const { plant } = useSignedIn();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const operation = plant.operations.find(({ id }) => id === finding.operation);
  if (operation === undefined || finding.defect !== undefined || finding.rule === 'held') return null;

  const open = async (): Promise<void> => {
    const here = [...section.operations, ...section.carried].find(
      (card) => card.operation === finding.operation,
    );
    if (here !== undefined) {
      show(recordPanel(here, then));
      return;
    }
    setBusy(true);
    const all = await askOrHere('section', { serial: section.serial, at: 'all' });
    setBusy(false);
    if (!all.ok) {
      setTrouble(all.trouble);
      return;
    }
    const card = all.answer.operations.find((one) => one.operation === finding.operation);
    if (card !== undefined) show(recordPanel(card, then));
  };
  return (
    <div>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <button
        type="button"
        aria-label={t('verdict.record', { work: say(operation.name) })}
        className={first ? 'button primary' : 'button'}
        disabled={busy}
        onClick={() => void open()}
      >
        {t('verdict.record-now')}
      </button>
    </div>
  );
};

/** One thing that stands against it: its name and where it was due, the sentence, who says so, and the way to mend it. */
const Missing = (props: MissingProps): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { findings } = props;
  const [finding] = findings;
  const operation = plant.operations.find(({ id }) => id === finding.operation);
  const station = plant.stations.find(({ id }) => id === finding.station);
  return (
    <li className="finding">
      <Mark name="refused" size={28} />
      <div className="grow stack tight">
        <p className="missing-name">
          {operation === undefined ? finding.operation : say(operation.name)}
          {station !== undefined && (
            <span className="quiet"> · {t('finding.due-at', { station: say(station.name) })}</span>
          )}
        </p>
        {findings.map((one, at) => (
          <p key={at} className="missing-says">
            {say(one.says)}
          </p>
        ))}
        <div className="row">
          <RecordMissing {...props} />
          {findings.map((one, at) => (
            <SourceSays key={at} source={one.source} />
          ))}
        </div>
      </div>
    </li>
  );
};

/** Rules that say it is about to hide or build on what nobody has proven. */
const UNPROVEN: ReadonlySet<string> = new Set([
  'cover-hides-unproven',
  'cover-hides-defect',
  'required-work-unproven',
  'defect-open',
  'held',
]);

/** Nothing forbids it. It is only green where nothing is open: a large green word is read, and the notes are not. */
const Cleared = ({ card, answer }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { section, show } = useWork();
  const unproven = answer.findings.some(({ rule }) => UNPROVEN.has(rule));
  const holds = section.holds.length;
  const open = unproven || holds > 0;
  const notes = answer.findings.length > 0 ? 'verdict.cleared-notes' : 'verdict.cleared-says';
  const held = unproven ? 'verdict.mind-says' : 'verdict.cleared-held';
  return (
    <>
      <div className={open ? 'verdict mind' : 'verdict cleared'}>
        <Mark name={open ? 'note' : 'proven'} size={64} />
        <div className="grow">
          <p className="verdict-word">{t(unproven ? 'verdict.mind' : 'verdict.cleared')}</p>
          <p>{t(open ? held : notes, { work: say(card.name), holds })}</p>
        </div>
      </div>
      {answer.findings.length > 0 && <FindingList findings={answer.findings} />}
      <button
        type="button"
        className={unproven ? 'button big' : 'button primary big'}
        onClick={() => show(recordPanel(card))}
      >
        {t('verdict.record-done', { work: say(card.name) })}
      </button>
    </>
  );
};

const Refused = ({ card, answer }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { mayI, asking } = useWork();
  const refusing = byOperation(answer.findings.filter(({ grade }) => grade === 'refuse'));
  const others = answer.findings.filter(({ grade }) => grade !== 'refuse');
  return (
    <>
      <div className="verdict refused">
        <Mark name="refused" size={64} />
        <div className="grow">
          <p className="verdict-word">{t(card.cover ? 'verdict.refused-cover' : 'verdict.refused')}</p>
          <p>{t('verdict.refused-says', { work: say(card.name), count: refusing.length })}</p>
        </div>
      </div>
      <ul className="findings">
        {refusing.map((findings, at) => (
          <Missing key={at} findings={findings} then={card} first={at === 0} />
        ))}
      </ul>
      {others.length > 0 && <FindingList findings={others} />}
      <button type="button" className="button big" disabled={asking} onClick={() => mayI(card)}>
        {t('verdict.again')}
      </button>
    </>
  );
};

/** The answer to "may I?", full width, at once: the word, why, who says so, and what to do now. */
export const VerdictPanel = ({ card, answer }: Props): ReactNode => {
  const { say } = useSpeech();
  const { close } = useWork();
  const { plant } = useSignedIn();
  return (
    <section className="stack settle" aria-live="assertive">
      <PanelHead title={say(card.name)} close={close} />
      {answer.events.length === 0 && <JudgedHere />}
      {answer.answer === 'cleared' ? (
        <Cleared card={card} answer={answer} />
      ) : (
        <Refused card={card} answer={answer} />
      )}
      <p className="governing">{say(plant.governing)}</p>
    </section>
  );
};
