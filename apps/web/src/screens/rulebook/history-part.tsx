import { useEffect, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { csvOf } from '../../charts/csv';
import { save } from '../../charts/save';
import { ChoiceField, TextField } from '../../ui/field';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import { retroLines } from './retro-lines';
import type { RetroLine } from './retro-lines';

type Of<T extends RetroLine['is']> = Extract<RetroLine, { readonly is: T }>;
type Run = {
  readonly progress: Of<'progress'> | null;
  readonly found: readonly Of<'found'>[];
  readonly done: Of<'done'> | null;
  readonly broken: boolean;
};
const NOT_RUN: Run = { progress: null, found: [], done: null, broken: false };
/** The table shows the first of them; all are in the CSV. */
const SHOWN = 500;

/** Any revision over any span of history: the sections it would not have accepted, and why. */
export const HistoryPart = (): ReactNode => {
  const { t, say } = useSpeech();
  const book = useQuestion('rulebook', LATEST);
  const [revision, setRevision] = useState('');
  const [span, setSpan] = useState({ from: '', to: '' });
  const [newOnly, setNewOnly] = useState(true);
  const [run, setRun] = useState<Run>(NOT_RUN);
  const stop = useRef<AbortController | null>(null);
  useEffect(() => () => stop.current?.abort(), []);
  const start = async (): Promise<void> => {
    stop.current?.abort();
    const control = new AbortController();
    stop.current = control;
    await follow({ revision, ...span }, control.signal, setRun);
  };
  const found = run.found.filter(({ saidThen }) => !newOnly || !saidThen);
  const download = (): void =>
    save(
      'retro-check.csv',
      new Blob([
        csvOf([COLUMNS, ...found.map((one) => [one.serial, one.occurredAt, one.rule, say(one.says)])]),
      ]),
    );
  return (
    <>
      <h1>{t('book.history')}</h1>
      <div className="book-find">
        <ChoiceField
          name={t('book.revision')}
          value={revision}
          none={String(book.answer?.revision ?? '')}
          from={(book.answer?.issued ?? []).map((one) => ({
            id: String(one.revision),
            says: String(one.revision),
          }))}
          change={setRevision}
        />
        <TextField
          name={t('book.from-day')}
          type="date"
          value={span.from}
          change={(from) => setSpan({ ...span, from })}
        />
        <TextField
          name={t('book.to-day')}
          type="date"
          value={span.to}
          change={(to) => setSpan({ ...span, to })}
        />
      </div>
      <label className="row">
        <input type="checkbox" checked={newOnly} onChange={(event) => setNewOnly(event.target.checked)} />
        {t('book.new-only')}
      </label>
      <div className="row">
        <button type="button" className="button primary" onClick={() => void start()}>
          {t('book.run')}
        </button>
        <button type="button" className="button" disabled={found.length === 0} onClick={download}>
          {t('book.csv')}
        </button>
      </div>
      <RunSays run={run} />
      {found.length > 0 && <FoundTable found={found.slice(0, SHOWN)} />}
    </>
  );
};

const LATEST = {};
const COLUMNS = ['serial', 'occurred at', 'rule', 'reason'];

const follow = async (
  wanted: { readonly [name: string]: string },
  signal: AbortSignal,
  show: (run: Run) => void,
): Promise<void> => {
  let run = NOT_RUN;
  const found: Of<'found'>[] = [];
  try {
    for await (const line of retroLines(wanted, signal)) {
      if (line.is === 'found') found.push(line);
      if (line.is === 'progress') show((run = { ...run, progress: line, found: [...found] }));
      if (line.is === 'done') show((run = { ...run, done: line, found: [...found] }));
    }
  } catch (fault) {
    // Nobody answers, or the person went elsewhere; anything else is a mistake of ours and must be seen.
    if (!(fault instanceof TypeError) && !signal.aborted) throw fault;
  }
  if (run.done === null && !signal.aborted) show({ ...run, broken: true });
};

const RunSays = ({ run }: { readonly run: Run }): ReactNode => {
  const { t } = useSpeech();
  if (run.broken) return <p className="notice refused">{t('book.broken')}</p>;
  if (run.done !== null) {
    const { found, sections, fresh } = run.done;
    return <p role="status">{t('book.found', { found, sections, fresh })}</p>;
  }
  if (run.progress === null) return null;
  const { homes, of, entries } = run.progress;
  return (
    <p role="status">
      <progress value={homes} max={of} /> {t('book.running', { homes, of, entries })}
    </p>
  );
};

const FoundTable = ({ found }: { readonly found: readonly Of<'found'>[] }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <TableFrame name={t('book.history')}>
      <table className="dense">
        <thead>
          <tr>
            <th scope="col">{t('book.serial')}</th>
            <th scope="col">{t('book.day')}</th>
            <th scope="col">{t('book.says')}</th>
          </tr>
        </thead>
        <tbody>
          {found.map((one, index) => (
            <tr key={index}>
              <th scope="row" className="mono">
                {one.serial}
              </th>
              <td>{one.occurredAt.slice(0, 10)}</td>
              <td>{say(one.says)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};
