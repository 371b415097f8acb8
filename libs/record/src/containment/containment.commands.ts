import type { ContainedInspected, ContainmentOpened } from './containment.events';

export type ContainmentCommand =
  | { readonly type: 'OpenContainment'; readonly data: ContainmentOpened['data'] }
  | { readonly type: 'InspectContained'; readonly data: ContainedInspected['data'] };
