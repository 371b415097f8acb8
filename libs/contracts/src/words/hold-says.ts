import type { OpenHold, Rule, Words } from '@libs/judge';
import type { Key } from './catalogue-en';
import type { Names } from './names';
import { NOTHING, isKey, say } from './say';

type Cause = {
  /** A rule's code, or the plant's own reason code. */
  readonly reason: string;
  readonly operation: string | null;
  readonly characteristic?: string | null;
};

/** Why something is held, as part of a sentence. */
export const becauseSays = ({ reason, operation, characteristic }: Cause, names: Names): Words => {
  const key = keyOf(reason, characteristic ?? null);
  if (key === undefined) return reason === '' ? NOTHING : names.reason(reason);

  const isNamed = operation !== null && characteristic !== undefined && characteristic !== null;
  return say(key, {
    operation: operation === null ? '' : names.operation(operation),
    characteristic: isNamed ? names.characteristic(operation, characteristic) : '',
  });
};

/** A rule about a value says which value, where that is known. */
const keyOf = (reason: string, characteristic: string | null): Key | undefined => {
  const ofOperation = `because.${reason}.operation`;
  if (characteristic === null && isKey(ofOperation)) return ofOperation;

  const key = `because.${reason}`;
  return isKey(key) ? key : undefined;
};

export const isRule = (reason: string): boolean => isKey(`because.${reason}`);

/** A hold in one line: why, and what the way out is. */
export const holdSays = (
  hold: Pick<OpenHold, 'reason' | 'operation' | 'characteristic' | 'defect'>,
  names: Names,
): Words => {
  const byRule = isRule(hold.reason);
  return say('hold.says', {
    because: becauseSays(hold, names),
    about:
      byRule || hold.operation === null
        ? ''
        : say('hold.about', { operation: names.operation(hold.operation) }),
    wayOut: say(wayOut(hold)),
  });
};

/** Holds that go by themselves once the record is made good. */
const SHORT_OF_RECORD: ReadonlySet<string> = new Set<Rule>([
  'cover-hides-unproven',
  'required-work-unproven',
  'expected-work-unproven',
  'value-missing',
  'photo-missing',
  'lot-missing',
  'instrument-missing',
  'left-with-open-work',
]);

/** Holds that no role of the plant's decides on alone. */
const OWN_WAY: { readonly [reason: string]: Key } = {
  'red-tag': 'hold.way-out.agency',
  contained: 'hold.way-out.look',
  'laid-open': 'hold.way-out.again',
};

const wayOut = ({ defect, reason }: Pick<OpenHold, 'defect' | 'reason'>): Key => {
  const own = OWN_WAY[reason];
  if (own !== undefined) return own;
  if (defect !== null) return 'hold.way-out.defect';
  return SHORT_OF_RECORD.has(reason) ? 'hold.way-out.record' : 'hold.way-out.decision';
};
