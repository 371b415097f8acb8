export { changeSays, conditionsSay, signerSays } from './change-says';
export type { RuleChange } from './change-says';
export { en } from './catalogue-en';
export type { Key } from './catalogue-en';
export { es } from './catalogue-es';
export { defectSays } from './defect-says';
export { eventSays, spokenEvents } from './event-says';
export type { EventData } from './event-data';
export { findingSays } from './finding-says';
export { becauseSays, holdSays } from './hold-says';
export { knowingDefects } from './knowing-defects';
export { namesFrom } from './names';
export type { NameLists, Names } from './names';
export { PROBLEMS, problemSays } from './problem-says';
export { ruleSays } from './rule-says';
export { say } from './say';
export type { Fill } from './say';
export { sourceSays } from './source-says';
export { requirementSays, unitSays, valueSays } from './value-says';
export {
  OUTSIDE_CAUSES,
  causeSays,
  clockSays,
  confidenceSays,
  exposureReasonSays,
  markSays,
  sourceSaysOf,
  verdictSays,
} from './cause-says';
