import type { AnswerOf } from '@libs/contracts';
import { canonicalJson } from '@libs/kernel';
import type { JsonObject } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import { CLAIM, DETERMINATION } from '@libs/record';
import type { DeterminationCommand } from '@libs/record';
import { recordedAnswer } from '../answers';
import type { Asked } from '../questions/asked';
import { arrivalOf, askLedger, rejected, sealedText } from '../telling';
import type { Arrival, When } from '../telling';
import type { Told, Tellings } from '../told';
import type { Workings } from '../workings';
import { COUNTING_STREAM } from './counting';
import { exposureQuestion, traceQuestion } from './tracing';

type DeterminationTelling =
  | 'determinationOpening'
  | 'initialDetermination'
  | 'classDetermination'
  | 'agencyPosition'
  | 'notification'
  | 'remedyPlan'
  | 'planApproval'
  | 'remedy'
  | 'completion'
  | 'countingRule';

type Params = { readonly [name: string]: string };
const fileOf = (params: Params): string => params['determination'] ?? '';

export const determinationTellings = (
  workings: Workings,
  asked: Asked,
): Pick<Tellings, DeterminationTelling> => ({
  determinationOpening: openFile(workings, asked),
  ...deciding(workings),
  ...remedying(workings),
});

/** Evidence and exposure are taken as they stand now: later claims do not change what was decided on. */
const openFile =
  (workings: Workings, asked: Asked): Tellings['determinationOpening'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'determinationOpening', body, sender, params });
    const trace = await traceQuestion(asked)(body.claim);
    const { cause, method } = body;
    if (trace === undefined) return rejected({ code: 'claim-unknown', claim: body.claim }, body);
    const exposed = cause === null ? null : await exposureQuestion(asked)(body.claim, cause, method);
    if (exposed === undefined) return rejected({ code: 'cause-unknown', cause: cause ?? '' }, body);
    const determination = `${sender.key}-0`;
    const claims = trace.claims.map(({ claim }) => claim);
    return tellFile(workings, arrival, {
      type: 'OpenDetermination',
      data: {
        determination,
        claims,
        receivedOn: await firstReceived(workings, claims),
        asOfPosition: trace.position,
        trace: canonicalJson(jsonOf(trace)),
        cause,
        method,
        exposure: (exposed?.homes ?? []).map(({ home, where, reason, sections }) => ({
          home,
          where,
          reason,
          sections,
        })),
      },
    });
  };

/** Through JSON and back: what is left out is absent, and what is frozen is exactly what was answered. */
const jsonOf = (answer: object): JsonObject => JSON.parse(JSON.stringify(answer)) as JsonObject;

const firstReceived = async ({ ledger }: Workings, claims: readonly string[]): Promise<string> => {
  const days: string[] = [];
  for (const claim of claims)
    days.push((await ledger.state(CLAIM, claim)).logged?.receivedOn ?? '9999-12-31');
  return days.toSorted()[0] ?? '9999-12-31';
};

type Deciding =
  'initialDetermination' | 'classDetermination' | 'agencyPosition' | 'notification' | 'countingRule';

const deciding = (workings: Workings): Pick<Tellings, Deciding> => ({
  initialDetermination: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'initialDetermination', body, sender, params });
    const { severity, decidedOn, methods } = body;
    const determination = fileOf(params);
    const bases = sealed(workings, arrival, { determination, field: 'bases', text: body.bases });
    const data = { determination, severity, decidedOn, methods, bases };
    return tellFile(workings, arrival, { type: 'DetermineInitially', data });
  },
  classDetermination: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'classDetermination', body, sender, params });
    const { decidedOn, homes, methods } = body;
    const determination = fileOf(params);
    const bases = sealed(workings, arrival, { determination, field: 'bases', text: body.bases });
    const data = { determination, decidedOn, homes, methods, bases };
    return tellFile(workings, arrival, { type: 'DetermineClass', data });
  },
  agencyPosition: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'agencyPosition', body, sender, params });
    const { concurs, takenOn, reference } = body;
    const determination = fileOf(params);
    const data = { determination, concurs, takenOn, reference, ...noted(workings, arrival, determination) };
    return tellFile(workings, arrival, { type: 'TakeAgencyPosition', data });
  },
  notification: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'notification', body, sender, params });
    const { notifiedOn, reference } = body;
    const data = { determination: fileOf(params), notifiedOn, reference };
    return tellFile(workings, arrival, { type: 'NotifyGovernment', data });
  },
  countingRule: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'countingRule', body, sender, params });
    const { lastDay, daysOff, holidays, warnDays } = body;
    const data = { determination: COUNTING_STREAM, lastDay, daysOff, holidays, warnDays };
    return tellFile(workings, arrival, { type: 'SetCountingRule', data });
  },
});

const remedying = (
  workings: Workings,
): Pick<Tellings, 'remedyPlan' | 'planApproval' | 'remedy' | 'completion'> => ({
  remedyPlan: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'remedyPlan', body, sender, params });
    const { submittedOn, reference } = body;
    const data = { determination: fileOf(params), submittedOn, reference };
    return tellFile(workings, arrival, { type: 'SubmitPlan', data });
  },
  planApproval: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'planApproval', body, sender, params });
    const { approvedOn, noticesBy, correctBy, reference } = body;
    const data = { determination: fileOf(params), approvedOn, noticesBy, correctBy, reference };
    return tellFile(workings, arrival, { type: 'ApprovePlan', data });
  },
  remedy: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'remedy', body, sender, params });
    const { home, how, doneOn } = body;
    const determination = fileOf(params);
    const data = { determination, home, how, doneOn, ...noted(workings, arrival, determination) };
    return tellFile(workings, arrival, { type: 'RemedyHome', data });
  },
  completion: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'completion', body, sender, params });
    const { reportedOn, reference } = body;
    const data = { determination: fileOf(params), reportedOn, reference };
    return tellFile(workings, arrival, { type: 'ReportCompletion', data });
  },
});

const sealed = (
  workings: Workings,
  arrival: Arrival,
  text: { readonly determination: string; readonly field: string; readonly text: string },
): string =>
  sealedText(workings, arrival, { ref: { kind: DETERMINATION.name, serial: text.determination }, ...text });

const noted = (
  workings: Workings,
  arrival: Arrival<When & { readonly note?: string | undefined }>,
  determination: string,
): { readonly note?: string } => {
  const { note: text } = arrival.body;
  return text === undefined
    ? {}
    : { note: sealed(workings, arrival, { determination, field: 'note', text }) };
};

const tellFile = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: DeterminationCommand,
): Promise<Told<AnswerOf<'initialDetermination'>>> => {
  const { determination } = command.data;
  const outcome = await askLedger(workings, arrival, [
    partOf({ kind: DETERMINATION, id: determination, command, facts: () => ({}) }),
  ]);
  return outcome.ok
    ? { ok: true, answer: { ...(await recordedAnswer(workings, outcome)), determination } }
    : rejected(outcome.rejection, arrival.body);
};
